#pragma once

#include <functional>
#include <optional>

#include <QLabel>
#include <QLineEdit>
#include <QPointer>
#include <QWidget>

#include "ui/look/theme.h"

namespace crosstick::window {

/// One thing asked in words at the foot of the window, where its answer is typed: Enter gives it, Escape leaves it.
/// What cannot be taken is refused there, with the reason, and nothing else in the window stands still meanwhile.
class Question final : public QWidget {
    Q_OBJECT

  public:
    /// Takes an answer: nothing where it is good, else why it is not.
    using Take = std::function<std::optional<QString>(const QString& answer)>;

    explicit Question(QWidget* parent = nullptr);
    void setLight(look::Light light);
    /// A question that was open before is left.
    void ask(const QString& words, const QString& proposed, Take take);
    void leave();
    [[nodiscard]] QLineEdit* field() const { return field_; }
    [[nodiscard]] QString refusal() const { return refusal_->text(); }

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

  private:
    QLabel *words_, *refusal_;
    QLineEdit* field_;
    Take take_;
    look::Light light_ = look::Light::Day;
    QPointer<QWidget> before_;  ///< whose the caret was

    void give();
};

}  // namespace crosstick::window
