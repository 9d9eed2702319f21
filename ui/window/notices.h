#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

#include <QLabel>
#include <QScrollArea>

#include "ui/look/theme.h"

class QGridLayout;

namespace crosstick::window {

/// What the window says, at its foot: one line that stays until the next one or the next step, and above it faults that
/// stay until they are mended or put away. Nothing goes before it is read. All stand in one grid: words at the left,
/// what mends it at the right, button under button. Where they would take too much of the window they are rolled.
class Notices final : public QScrollArea {
    Q_OBJECT

  public:
    /// A way to mend a fault, as a button beside it.
    struct Deed {
        QString words;
        std::function<void()> does;
    };

    explicit Notices(QWidget* parent = nullptr);
    void setLight(look::Light light);
    /// @param deeds  what may be done about it at once
    void say(const QString& words, const std::vector<Deed>& deeds = {});
    [[nodiscard]] QString said() const { return said_.words; }
    /// A fault about something; the same words again, once put away, stay away until it was mended.
    void keep(const std::string& about, const QString& words, std::vector<Deed> deeds);
    void mend(const std::string& about);
    /// What is kept about something, put away or not; empty where nothing is.
    [[nodiscard]] QString kept(const std::string& about) const;

    /// As high as its rows are at this width, and no more than a part of the window.
    void fit();

  protected:
    void resizeEvent(QResizeEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    struct Kept {
        QString words;
        std::vector<Deed> deeds;
        bool away = false;
    };
    look::Light light_ = look::Light::Day;
    Kept said_;
    std::map<std::string, Kept> kept_;
    QWidget* body_;
    QGridLayout* grid_ = nullptr;

    void renew();
    void addRow(int row, int columns, const QString& words, const QColor& ink, const std::vector<Deed>& deeds);
};

}  // namespace crosstick::window
