#pragma once

#include <QObject>

#include "ui/look/theme.h"

class QApplication;

class QWidget;

namespace crosstick::look {

/// Dims every window of the program, menus and tool tips too, below what the panel itself can: the finished picture is
/// multiplied by a level's share. Each window gets a shade that lies over all it holds and lets the hand through.
class Dimmer final : public QObject {
    Q_OBJECT

  public:
    static constexpr int kLevels = 6;    ///< the highest takes nothing away
    static constexpr int kBoldUpTo = 3;  ///< letters are bold at this level and below

    Dimmer();
    /// By day nothing is dimmed. @param level  1 to kLevels
    void setLevel(Light light, int level);
    [[nodiscard]] int level() const { return level_; }
    /// How much of the picture's values is left at a level: 1 at the highest. Our own steps.
    [[nodiscard]] static double shareOf(int level);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    Light light_ = Light::Day;
    int level_ = kLevels;

    void shadeWindow(QWidget& window) const;
    void shadeField(QWidget& field) const;
};
[[nodiscard]] Weight ordinaryLetters();

}  // namespace crosstick::look
