#pragma once

#include <functional>

#include <QLabel>
#include <QLineEdit>
#include <QTableView>
#include <QToolButton>
#include <QWidget>

#include "ui/look/theme.h"
#include "ui/march/column_model.h"
#include "ui/press/faces.h"

namespace crosstick::march {

/// The sill with a column: at the left what holds for all of it, then a row an element, to be typed over, and the
/// buttons that add, move and take out.
class MarchSill final : public QWidget {
    Q_OBJECT

  public:
    static constexpr int kHeight = 204;

    /// @param faces  what symbols are lettered in; null where they are missing. Outlives this.
    MarchSill(work::Work& work, std::function<QString(const Error&)> say, const press::Faces* faces,
              QWidget* parent = nullptr);

    void setLight(look::Light light);
    /// The column that a block shows; the first for no name.
    void show(const std::string& column);
    void renew();
    [[nodiscard]] ColumnModel& model() { return model_; }

  Q_SIGNALS:
    void refused(const QString& why);  ///< empty: the last one is put right
    void left();                       ///< back to the table

  protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    work::Work& work_;
    std::function<QString(const Error&)> say_;
    const press::Faces* faces_;
    look::Light light_ = look::Light::Day;
    ColumnModel model_;
    QTableView* table_;
    QWidget* facts_;
    QLineEdit *name_, *files_, *apart_, *interval_, *said_;
    QLabel* sum_;
    QToolButton *add_, *up_, *down_, *out_;

    void buildTable();
    void buildFacts();
    void buildSaid();
    [[nodiscard]] QWidget* buttons();
    QLineEdit* field(const QString& words, const QString& whole);
    using Takes = Result<void> (ColumnModel::*)(const QString&);
    void take(QLineEdit* field, Takes takes);
    void choose(int row);
    void renewFacts();
};

}  // namespace crosstick::march
