#include "ui/registering/picture_canvas.h"

#include <algorithm>
#include <cmath>

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QWheelEvent>

#include "ui/table/lettering.h"
#include "ui/table/palette.h"

namespace crosstick::registering {
namespace {

using registration::PixelPoint;
using table::Area;
using table::Spot;
using table::View;
using table::Zoom;

constexpr double kMargin = 12;
constexpr Zoom kLeast{0.005};
constexpr Zoom kMost{16};
constexpr double kJudge = 2;  // of the screen for one pixel of the picture: near enough to judge a crossing
constexpr double kLoupeSide = 208;
constexpr double kLoupeZoom = 5;
constexpr double kGrip = 9;  // pixels beside a mark that still mean it
constexpr double kDragged = 4;
constexpr double kLongestArrow = 60;

table::Theme themeOf(look::Light light) {
    return light == look::Light::Night ? table::Theme::Night : table::Theme::Day;
}

geodesy::PlanePoint placeOf(PixelPoint pixel) {
    return {Metres(pixel.x), Metres(-pixel.y)};
}

/// The picture lies on a plane of its own, one metre to the pixel, y up.
const table::SheetLie& lieOfPicture() {
    static const table::SheetLie lie{plan::Placement{{Metres(0), Metres(0)}, 1, 0, 0, -1}};
    return lie;
}

void paintCross(QPainter& painter, QPointF at, double arm, const QPen& pen) {
    painter.setPen(pen);
    painter.drawLine(QLineF(at.x() - arm, at.y(), at.x() - 2, at.y()));
    painter.drawLine(QLineF(at.x() + 2, at.y(), at.x() + arm, at.y()));
    painter.drawLine(QLineF(at.x(), at.y() - arm, at.x(), at.y() - 2));
    painter.drawLine(QLineF(at.x(), at.y() + 2, at.x(), at.y() + arm));
}

QPointF on(const View& view, PixelPoint pixel) {
    const Spot spot = view.spot(placeOf(pixel));
    return {spot.x, spot.y};
}

}  // namespace

PictureCanvas::PictureCanvas(const registration::Registering* work, const press::Faces* faces, QWidget* parent)
    : QWidget(parent), work_(work), faces_(faces), view_(Area{0, 0, 100, 100}, {Metres(0), Metres(0)}, Zoom(1)) {
    setAccessibleName(tr("Scan to be registered"));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setCursor(Qt::CrossCursor);
    setMinimumSize(240, 160);
    connect(&tiles_, &table::TileStore::arrived, this, [this] { update(); });
    connect(&tiles_, &table::TileStore::glanced, this, [this] { update(); });
    connect(&tiles_, &table::TileStore::failed, this, &PictureCanvas::broken);
}

void PictureCanvas::show(table::SheetInk ink, look::Light light) {
    const bool isOther = ink.size.columns != ink_.size.columns || ink.size.rows != ink_.size.rows;
    ink_ = std::move(ink);
    light_ = light;
    tiles_.lay({ink_}, themeOf(light));
    if (isOther) {
        fit();
    }
    update();
}

void PictureCanvas::setLight(look::Light light) {
    show(ink_, light);
}

void PictureCanvas::setWork(const registration::Registering* work) {
    work_ = work;
    update();
}

void PictureCanvas::setPending(std::optional<PixelPoint> at) {
    pending_ = at;
    update();
}

void PictureCanvas::setArrows(bool shown) {
    arrows_ = shown;
    update();
}

void PictureCanvas::fit() {
    const table::GridBox whole{placeOf({0, static_cast<double>(ink_.size.rows)}),
                               placeOf({static_cast<double>(ink_.size.columns), 0})};
    view_ =
        View::fitting(whole, Area{0, 0, static_cast<double>(width()), static_cast<double>(height())}, kMargin, kMost);
    fitted_ = true;
    update();
}

void PictureCanvas::lookAt(PixelPoint at) {
    fitted_ = false;
    view_ = view_.centredOn(placeOf(at)).seenAt(Zoom(std::max(view_.zoom().value(), kJudge)));
    update();
}

PixelPoint PictureCanvas::pixelAt(QPointF spot) const {
    const geodesy::PlanePoint place = view_.place({spot.x(), spot.y()});
    return {place.easting.value(), -place.northing.value()};
}

QPointF PictureCanvas::spotOf(PixelPoint pixel) const {
    return on(view_, pixel);
}

double PictureCanvas::pixelsOnScreen() const {
    return view_.zoom().value();
}

void PictureCanvas::resizeEvent(QResizeEvent* /*event*/) {
    const Area area{0, 0, static_cast<double>(width()), static_cast<double>(height())};
    fitted_ || view_.area().width <= 100 ? fit() : void(view_ = view_.in(area));
}

void PictureCanvas::paintPicture(QPainter& painter, const View& view, const QRectF& part) {
    const auto scaling = view.zoom().value() > 1.5 ? table::Scaling::Nearest : table::Scaling::Smooth;
    tiles_.paint(painter, 0, view, lieOfPicture(), part, scaling);
}

/// Marks as solid crosses with what they print, crossings in use as small ones, others as open rings.
void PictureCanvas::paintMarks(QPainter& painter, const View& view) const {
    const table::Palette colours = table::palette(themeOf(light_));
    for (const registration::FoundCrossing& found : work_->crossings()) {
        const QPointF at = on(view, found.crossing.at);
        if (found.isUsed) {
            paintCross(painter, at, 6, QPen(colours.ours, 1.5));
        } else {
            painter.setPen(QPen(colours.ours, 1.5, Qt::DotLine));
            painter.setBrush(Qt::NoBrush);
            painter.drawEllipse(at, 6, 6);
        }
    }
    for (std::size_t n = 0; n < work_->marks().size(); ++n) {
        const registration::NamedMark& mark = work_->marks()[n];
        const QPointF at = on(view, mark.at);
        const bool isBlunder = work_->fit() && work_->fit()->residuals[n].isBlunder;
        paintCross(painter, at, 11, QPen(colours.pens.paper, 4.5));
        paintCross(painter, at, 11, QPen(colours.ours, 2, isBlunder ? Qt::DotLine : Qt::SolidLine));
        const std::string words = std::to_string(n + 1) + "  " + mark.printed + (isBlunder ? "  blunder" : "");
        const table::LetterStyle style{12, drawing::Weight::Bold, colours.ours};
        painter.setPen(Qt::NoPen);
        painter.setBrush(colours.card);
        painter.drawRect(QRectF(at.x() + 13, at.y() - 20, table::lettersWide(words, style) + 8, 17));
        table::letter(painter, *faces_, {at.x() + 17, at.y() - 7}, words, style);
    }
}

/// From each mark and crossing to where the fit has it, so much longer that the longest can be seen.
void PictureCanvas::paintArrows(QPainter& painter) const {
    if (!work_->fit()) {
        return;
    }
    const auto all = work_->all();
    double longest = 0;
    std::size_t worst = 0;
    for (std::size_t n = 0; n < all.size(); ++n) {
        const registration::Residual& residual = work_->fit()->residuals[n];
        if (!residual.isBlunder && residual.size() > longest) {
            longest = residual.size();
            worst = n;
        }
    }
    if (longest < 1e-6) {
        return;
    }
    const table::Palette colours = table::palette(themeOf(light_));
    const double factor = kLongestArrow / longest;
    painter.setPen(QPen(colours.ours, 2));
    for (std::size_t n = 0; n < all.size(); ++n) {
        const registration::Residual& residual = work_->fit()->residuals[n];
        const QPointF from = on(view_, all[n].at);
        const QPointF way(-residual.pixels.x * factor, -residual.pixels.y * factor);
        const double length = std::hypot(way.x(), way.y());
        if (residual.isBlunder || length < 1) {
            continue;
        }
        const QPointF to = from + way;
        const QPointF along = way / length;
        const QPointF across(-along.y(), along.x());
        painter.drawLine(from, to);
        painter.drawLine(to, to - along * 7 + across * 3.5);
        painter.drawLine(to, to - along * 7 - across * 3.5);
    }
    const auto interval = work_->interval();
    if (worst >= work_->marks().size() && interval) {  // those that somebody set carry their names already
        const QPointF at = on(view_, all[worst].at) + QPointF(8, -8);
        table::letter(painter, *faces_, {at.x(), at.y()},
                      "worst: " + registration::printedName(all[worst].place, *interval),
                      {12, drawing::Weight::Bold, colours.ours});
    }
}

/// What lies under the pending spot, else under the hand, five times as large as its pixels.
void PictureCanvas::paintLoupe(QPainter& painter) {
    const std::optional<PixelPoint> at = pending_ ? pending_ : hand_ ? std::optional(pixelAt(*hand_)) : std::nullopt;
    const bool isOver = at && at->x >= 0 && at->y >= 0 && at->x <= ink_.size.columns && at->y <= ink_.size.rows;
    if (!isOver || view_.zoom().value() >= kLoupeZoom) {
        return;
    }
    const table::Palette colours = table::palette(themeOf(light_));
    const bool isLeft = hand_ && hand_->x() > width() - kLoupeSide - 60 && hand_->y() < kLoupeSide + 60;
    const Area area{isLeft ? 12.0 : width() - kLoupeSide - 12, 12, kLoupeSide, kLoupeSide};
    const QRectF frame(area.left, area.top, area.width, area.height);
    painter.save();
    painter.fillRect(frame, colours.desk);
    painter.setClipRect(frame);
    const View near(area, placeOf(*at), Zoom(kLoupeZoom));
    paintPicture(painter, near, frame);
    paintCross(painter, frame.center(), kLoupeSide / 2, QPen(colours.pens.paper, 3));
    paintCross(painter, frame.center(), kLoupeSide / 2, QPen(colours.ours, 1));
    painter.restore();
    painter.setPen(QPen(colours.ours, 2));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(frame);
}

void PictureCanvas::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const table::Palette colours = table::palette(themeOf(light_));
    painter.fillRect(rect(), colours.desk);
    if (faces_ == nullptr) {
        return;
    }
    paintPicture(painter, view_, rect());
    paintMarks(painter, view_);
    if (arrows_) {
        paintArrows(painter);
    }
    if (pending_) {
        paintCross(painter, spotOf(*pending_), 16, QPen(colours.pens.paper, 4.5));
        paintCross(painter, spotOf(*pending_), 16, QPen(colours.ours, 2));
    }
    paintLoupe(painter);
}

void PictureCanvas::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton || event->button() == Qt::MiddleButton) {
        pressed_ = event->position();
        dragged_ = event->button() == Qt::MiddleButton;
    }
}

void PictureCanvas::mouseMoveEvent(QMouseEvent* event) {
    hand_ = event->position();
    if (pressed_ && (dragged_ || QLineF(*pressed_, event->position()).length() > kDragged)) {
        view_ = view_.dragged({pressed_->x(), pressed_->y()}, {event->position().x(), event->position().y()});
        pressed_ = event->position();
        dragged_ = true;
        fitted_ = false;
    }
    update();
}

void PictureCanvas::mouseReleaseEvent(QMouseEvent* event) {
    if (!pressed_ || std::exchange(dragged_, false)) {
        pressed_.reset();
        return;
    }
    pressed_.reset();
    const auto isHere = [&](PixelPoint at) { return QLineF(spotOf(at), event->position()).length() <= kGrip; };
    for (std::size_t n = 0; n < work_->marks().size(); ++n) {
        if (isHere(work_->marks()[n].at)) {
            Q_EMIT markPointed(n);
            return;
        }
    }
    for (std::size_t n = 0; n < work_->crossings().size(); ++n) {
        if (isHere(work_->crossings()[n].crossing.at)) {
            Q_EMIT crossingPointed(n);
            return;
        }
    }
    const PixelPoint at = pixelAt(event->position());
    if (at.x >= 0 && at.y >= 0 && at.x <= ink_.size.columns && at.y <= ink_.size.rows) {
        Q_EMIT pointed(at.x, at.y);
    }
}

void PictureCanvas::leaveEvent(QEvent* /*event*/) {
    hand_.reset();
    update();
}

void PictureCanvas::wheelEvent(QWheelEvent* event) {
    const double factor = std::pow(1.0015, event->angleDelta().y());
    view_ = view_.zoomedAt({event->position().x(), event->position().y()}, factor, kLeast, kMost);
    fitted_ = false;
    update();
}

void PictureCanvas::keyPressEvent(QKeyEvent* event) {
    const double step = event->modifiers().testFlag(Qt::ShiftModifier) ? 5 : 0.5;
    switch (event->key()) {
        case Qt::Key_Left:
            return Q_EMIT nudged(-step, 0);
        case Qt::Key_Right:
            return Q_EMIT nudged(step, 0);
        case Qt::Key_Up:
            return Q_EMIT nudged(0, -step);
        case Qt::Key_Down:
            return Q_EMIT nudged(0, step);
        default:
            QWidget::keyPressEvent(event);
    }
}

}  // namespace crosstick::registering
