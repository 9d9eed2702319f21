#pragma once

#include <QObject>

class QWidget;

namespace crosstick::window {

/// A key that means something as long as it is down, wherever in the window the keyboard is. Repeats of a key that is
/// held are one press; when the window loses the keyboard while it is down, it counts as let go.
class HeldKey final : public QObject {
    Q_OBJECT

  public:
    HeldKey(Qt::Key key, QWidget* window);
    [[nodiscard]] bool isDown() const { return down_; }

  Q_SIGNALS:
    void pressed();
    void letGo();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    Qt::Key key_;
    QWidget* window_;
    bool down_ = false;

    void setDown(bool down);
    [[nodiscard]] bool isOfWindow(const QObject* watched) const;
};

}  // namespace crosstick::window
