#pragma once

#include <functional>
#include <optional>

#include <QLabel>
#include <QLineEdit>
#include <QWidget>

#include "ui/look/theme.h"

namespace crosstick::look {

/// A field with its name over it. Enter takes what is typed and goes on to the next, Escape puts back what is in force.
/// What cannot be taken is refused under it, with the reason, and the old value stays in force.
class Field final : public QWidget {
    Q_OBJECT

  public:
    /// Takes what was typed: nothing where it is good, else why it is not.
    using Take = std::function<std::optional<QString>(const QString& typed)>;

    Field(const QString& name, const QString& example, Take take, QWidget* parent);
    void setLight(Light light);
    /// What is in force; while the caret is in the field, or its text is refused, that stays.
    void show(const QString& value);
    /// A line beside the name: what follows from the value.
    void tell(const QString& words);
    [[nodiscard]] QLineEdit* edit() const { return edit_; }
    [[nodiscard]] QString refusal() const { return refusal_->text(); }

  Q_SIGNALS:
    void left();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    QLabel *name_, *told_, *refusal_;
    QLineEdit* edit_;
    Take take_;
    QString value_;

    bool enter();
    void refuse(const QString& why);
};

}  // namespace crosstick::look
