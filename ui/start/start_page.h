#pragma once

#include <vector>

#include <QPushButton>
#include <QWidget>

#include "core/files/journal.h"
#include "ui/look/theme.h"

class QVBoxLayout;

namespace crosstick::start {

/// A plan that was open before.
struct RecentPlan {
    QString file;
    QString name;
    QString words;  ///< "5 films, 4 phases, saved 14 MAR 31"
};

/// The empty window: bare glass with four ticks, one sentence, the ways in; recent plans, and what a crash left.
class StartPage final : public QWidget {
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
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    look::Light light_ = look::Light::Day;
    QWidget* glass_;
    QWidget* side_;
    QVBoxLayout* recents_;
    QVBoxLayout* found_;
    std::vector<files::Leftover> leftovers_;
};

}  // namespace crosstick::start
