#pragma once

#include <functional>

#include <QLabel>
#include <QToolButton>
#include <QWidget>

#include "ui/look/theme.h"
#include "ui/march/typed_table.h"
#include "ui/march/typed_view.h"

class QVBoxLayout;

namespace crosstick::march {

/// A button beside a table: a word, with all of its meaning to be read and heard.
[[nodiscard]] QToolButton* pageButton(const QString& words, const QString& whole, QWidget* parent);

/// One table of the force in the sill: at the left what it is and what was refused, then the rows, then what adds them
/// and takes them out.
class TablePage final : public QWidget {
    Q_OBJECT

  public:
    struct Words {
        QString title, about, add, addWhole, takeOut, takeOutWhole;
    };

    /// @param words  with no `add` for a table that has its rows from elsewhere
    TablePage(TypedTable& table, Words words, std::function<QString(const Error&)> say, QWidget* parent);
    void setLight(look::Light light);
    void renew();
    /// Put between title and the words under it.
    void addFact(QWidget* fact);
    [[nodiscard]] TypedView& view() { return *view_; }
    [[nodiscard]] QString told() const { return about_->text(); }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    TypedTable& table_;
    Words words_;
    std::function<QString(const Error&)> say_;
    look::Light light_ = look::Light::Day;
    QWidget* facts_;
    QVBoxLayout* factRows_;
    QLabel* about_;
    TypedView* view_;
    QToolButton *add_ = nullptr, *out_ = nullptr;

    void buildButtons(QVBoxLayout* rows);
    void widen();
    void tell(const QString& refusal);
    void choose(int row, int field);
};

}  // namespace crosstick::march
