#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

#include <QLabel>
#include <QWidget>

#include "ui/look/theme.h"

class QVBoxLayout;

namespace crosstick::window {

/// What the window says, at its foot: one line that stays until the next one or the next step, and above it faults that
/// stay until they are mended or put away. Nothing goes before it is read.
class Notices final : public QWidget {
    Q_OBJECT

  public:
    /// A way to mend a fault, as a button beside it.
    struct Deed {
        QString words;
        std::function<void()> does;
    };

    explicit Notices(QWidget* parent = nullptr);
    void setLight(look::Light light);
    void say(const QString& words);
    [[nodiscard]] QString said() const { return said_; }
    /// A fault about something; the same words again, once put away, stay away until it was mended.
    void keep(const std::string& about, const QString& words, std::vector<Deed> deeds);
    void mend(const std::string& about);
    /// What is kept about something, put away or not; empty where nothing is.
    [[nodiscard]] QString kept(const std::string& about) const;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    struct Kept {
        QString words;
        std::vector<Deed> deeds;
        bool away = false;
    };
    look::Light light_ = look::Light::Day;
    QString said_;
    std::map<std::string, Kept> kept_;
    QVBoxLayout* rows_;

    void renew();
    QWidget* row(const QString& words, const QColor& ink, const std::vector<Deed>& deeds);
};

}  // namespace crosstick::window
