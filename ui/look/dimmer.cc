#include "ui/look/dimmer.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <QApplication>
#include <QDialog>
#include <QEvent>
#include <QLineEdit>
#include <QPainter>
#include <QWidget>

namespace crosstick::look {
namespace {

// Each step takes the same part of what is left. Values of a pixel, not light: at 0.2 a screen sends a thirtieth.
constexpr std::array kShares{0.20, 0.28, 0.38, 0.53, 0.73, 1.0};
static_assert(kShares.size() == Dimmer::kLevels);

constexpr QRgb kBrightest = 0xffff5a4a;  ///< of the night's palette

/// Laid over a window or a field, so thin that the picture shows through as far as it is to be seen.
class Shade final : public QWidget {
  public:
    explicit Shade(QWidget* over) : QWidget(over) {
        setAttribute(Qt::WA_TransparentForMouseEvents);
        setAttribute(Qt::WA_NoSystemBackground);
        setFocusPolicy(Qt::NoFocus);
        setObjectName(QStringLiteral("shade"));
    }
    /// @param share  of each value that is left  @param most  no channel is brighter
    void lay(double share, QRgb most) {
        share_ = share;
        most_ = most;
        setGeometry(parentWidget()->rect());
        setVisible(share < 1 || most != kNoLimit);
        raise();
        update();
    }
    static constexpr QRgb kNoLimit = 0xffffffff;

  protected:
    void paintEvent(QPaintEvent* /*event*/) override {
        QPainter painter(this);
        if (most_ != kNoLimit) {
            painter.setCompositionMode(QPainter::CompositionMode_Darken);
            painter.fillRect(rect(), QColor(most_));
            painter.setCompositionMode(QPainter::CompositionMode_SourceOver);
        }
        painter.fillRect(rect(), QColor::fromRgbF(0, 0, 0, static_cast<float>(1 - share_)));
    }

  private:
    double share_ = 1;
    QRgb most_ = kNoLimit;
};

Shade* shadeOf(const QWidget& window) {
    return dynamic_cast<Shade*>(window.findChild<QWidget*>(QStringLiteral("shade"), Qt::FindDirectChildrenOnly));
}

void dim(QWidget& window, double share, QRgb most) {
    Shade* shade = shadeOf(window);
    if (shade == nullptr && (share < 1 || most != Shade::kNoLimit)) {
        shade = new Shade(&window);
    }
    if (shade != nullptr) {
        shade->lay(share, most);
    }
}

}  // namespace

Dimmer::Dimmer() {
    QCoreApplication::instance()->installEventFilter(this);
}

double Dimmer::shareOf(int level) {
    return kShares[static_cast<std::size_t>(std::clamp(level, 1, kLevels) - 1)];
}

void Dimmer::setLevel(Light light, int level) {
    light_ = light;
    level_ = std::clamp(level, 1, kLevels);
    for (QWidget* window : QApplication::topLevelWidgets()) {
        shadeWindow(*window);
    }
    if (auto* field = qobject_cast<QLineEdit*>(QApplication::focusWidget())) {
        shadeField(*field);
    }
}

/// By night, in a dialog that the toolkit paints, nothing is brighter than the night's own letters.
void Dimmer::shadeWindow(QWidget& window) const {
    const bool isOurs = light_ == Light::Day || qobject_cast<QDialog*>(&window) == nullptr;
    dim(window, light_ == Light::Day ? 1 : shareOf(level_), isOurs ? Shade::kNoLimit : kBrightest);
}

/// A caret is painted as the opposite of its ground: white by night.
void Dimmer::shadeField(QWidget& field) const {
    dim(field, 1, light_ == Light::Day ? Shade::kNoLimit : kBrightest);
}

bool Dimmer::eventFilter(QObject* watched, QEvent* event) {
    const bool matters = event->type() == QEvent::Show || event->type() == QEvent::Resize ||
                         event->type() == QEvent::ChildAdded || event->type() == QEvent::FocusIn;
    auto* part = matters && watched->isWidgetType() ? static_cast<QWidget*>(watched) : nullptr;
    if (part == nullptr) {
        return false;
    }
    if (qobject_cast<QLineEdit*>(part) != nullptr) {
        if (event->type() == QEvent::FocusIn || (event->type() == QEvent::Resize && shadeOf(*part) != nullptr)) {
            shadeField(*part);
        }
    } else if (part->isWindow() && event->type() == QEvent::ChildAdded) {
        if (Shade* shade = shadeOf(*part)) {
            shade->raise();
        }
    } else if (part->isWindow() && event->type() != QEvent::FocusIn) {
        shadeWindow(*part);
    }
    return false;
}

}  // namespace crosstick::look
