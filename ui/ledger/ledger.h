#pragma once

#include <functional>
#include <set>

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableView>
#include <QWidget>

#include "ui/ledger/legs_model.h"
#include "ui/look/theme.h"

class QVBoxLayout;

namespace crosstick::ledger {

/// The sill with the legs of a route: at the left where the figures come from, then a row a leg, then the sums. What is
/// missing for a figure is asked for at the left, one thing after the other, and typed there.
class Ledger final : public QWidget {
    Q_OBJECT

  public:
    static constexpr int kHeight = 132;
    static constexpr int kFolded = 28;

    Ledger(work::Work& work, std::function<QString(const Error&)> say, QWidget* parent = nullptr);

    void setLight(look::Light light);
    void setFolded(bool folded);
    [[nodiscard]] bool isWanted() const;  ///< a route is chosen or being drawn
    void renew();
    void showColumn(LegsModel::Column column, bool shown);
    void setRows(Rows rows);
    [[nodiscard]] const LegsModel& legs() const { return model_; }
    /// Asks for something at the left, the caret in its field; what is known already can be changed so.
    void ask(Want want);
    [[nodiscard]] std::optional<Want> asks() const { return asks_; }
    [[nodiscard]] QLineEdit* field() const { return field_; }
    [[nodiscard]] QString questionAsked() const { return question_->text(); }

  Q_SIGNALS:
    void roomWanted();                      ///< something is asked for, and there is no room for it
    void left();                            ///< back to the table
    void legChosen(crosstick::Uuid point);  ///< the leg that ends there
    void bendsWanted();                     ///< the other way of listing the legs
    void timingWanted();                    ///< there is more than one rate to see

  protected:
    void paintEvent(QPaintEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    work::Work& work_;
    std::function<QString(const Error&)> say_;
    LegsModel model_;
    QTableView* table_;
    QWidget* facts_;
    QLabel *title_, *use_, *angle_, *question_;
    QPushButton *pace_, *rate_;
    QLineEdit* field_;
    look::Light light_ = look::Light::Day;
    std::optional<Want> asks_;
    std::optional<Want> wished_;  ///< what somebody asked for himself
    std::set<Want> left_;         ///< not to be asked for unasked
    bool isRefused_ = false;

    void buildTable();
    void buildFacts();
    void renewFacts();
    void renewQuestion(const std::vector<Want>& wants);
    void showQuestion(const QString& words);
    void askAt(const QModelIndex& cell);
    void take();
    void leave();
};

}  // namespace crosstick::ledger
