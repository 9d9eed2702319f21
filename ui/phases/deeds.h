#pragma once

#include <functional>
#include <vector>

#include <QAbstractButton>

#include "core/plan/film.h"
#include "ui/look/theme.h"

namespace crosstick::phases {

/// Something that may be done from the rail rolled down, by one letter: nothing is typed there.
struct Deed {
    QString key;                 ///< as it comes from the keyboard: "F", "+"
    QString words;               ///< "New film"
    std::function<void()> does;  ///< empty: a key that is only told of ("F8", "hold: lift it")
};

/// A deed as a key with what it means beside it, to be pressed or typed.
class DeedButton final : public QAbstractButton {
    Q_OBJECT

  public:
    static constexpr int kHigh = 24;
    DeedButton(const Deed& deed, const look::Light& light, QWidget* parent);
    [[nodiscard]] const QString& key() const { return key_; }
    [[nodiscard]] QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;

  private:
    QString key_;
    bool isDone_;  ///< pressing does it
    const look::Light& light_;
};

}  // namespace crosstick::phases
