#pragma once

#include <vector>

#include <QLabel>
#include <QPushButton>
#include <QScrollArea>

#include "core/files/journal.h"
#include "ui/look/theme.h"

class QBoxLayout;
class QVBoxLayout;

namespace crosstick::start {

/// A plan that was open before.
struct RecentPlan {
    QString file;
    QString name;
    QString words;  ///< "5 films, 4 phases, saved 14 MAR 31"
};

/// The empty window: bare glass with four ticks, one sentence, the ways in; recent plans, and what a crash left. On a
/// small screen all of it draws together, and is rolled where it does not fit even so.
class StartPage final : public QScrollArea {
    Q_OBJECT

  public:
    explicit StartPage(QWidget* parent = nullptr);
    void setLight(look::Light light);
    void setRecent(const std::vector<RecentPlan>& plans);
    void setLeftovers(std::vector<files::Leftover> leftovers);

  Q_SIGNALS:
    void sheetWanted();
    void scanWanted();
    void planWanted();
    void gridWanted();
    void demoWanted();
    void nightWanted();
    void recentWanted(const QString& file);
    void takeUpWanted(const crosstick::files::Leftover& leftover);
    void leaveWanted(const crosstick::files::Leftover& leftover);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    look::Light light_ = look::Light::Day;
    QWidget* desk_;
    QWidget* glass_;
    QWidget* side_;
    QLabel* first_ = nullptr;
    QVBoxLayout* recents_ = nullptr;
    QVBoxLayout* found_ = nullptr;
    QBoxLayout* last_ = nullptr;  ///< demo and light
    std::vector<files::Leftover> leftovers_;

    void fillGlass();
    void fillSide();
    [[nodiscard]] QWidget* offer(const files::Leftover& leftover);
    [[nodiscard]] bool isNarrow() const;
    void place();
    void paintDesk();
};

}  // namespace crosstick::start
