#pragma once

#include <QLabel>
#include <QPushButton>
#include <QTimer>
#include <QWidget>

#include "ui/look/theme.h"
#include "ui/work/errands.h"

namespace crosstick::window {

/// In the head: what runs on other threads, how far it is, and a button that gives it up. What is over at once is not
/// shown; the button comes after a second.
class DoingMark final : public QWidget {
    Q_OBJECT

  public:
    DoingMark(work::Errands& errands, QWidget* parent);
    void setLight(look::Light light);
    void setMostWide(int pixels) { mostWide_ = pixels; }  ///< of the words
    [[nodiscard]] QString words() const { return words_->text(); }
    [[nodiscard]] QPushButton* giveUpButton() const { return giveUp_; }

  Q_SIGNALS:
    void givenUp(const QString& words);

  private:
    work::Errands& errands_;
    int mostWide_ = 300;
    QLabel* words_;
    QPushButton* giveUp_;
    QTimer first_, next_;

    void renew();
};

}  // namespace crosstick::window
