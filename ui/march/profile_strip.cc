#include "ui/march/profile_strip.h"

#include <algorithm>
#include <cmath>

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include "core/units/number_text.h"

namespace crosstick::march {
namespace {

constexpr int kSide = 58;           ///< left and right of the ground
constexpr int kOver = 46;           ///< for labels, in two rows
constexpr int kUnder = 30;          ///< for the words
constexpr Metres kLeastHeight{20};  ///< so that flat ground looks flat

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

QString metres(Metres length) {
    return QObject::tr("%1 m").arg(text(numberText(length.value(), 0)));
}

Metres length(const movement::Profile& profile) {
    return profile.spots.empty() ? Metres(0) : profile.spots.back().ground;
}

}  // namespace

ProfileStrip::ProfileStrip(QWidget* parent) : QWidget(parent) {
    setMouseTracking(true);
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Profile"));
}

void ProfileStrip::setLight(look::Light light) {
    light_ = light;
    update();
}

void ProfileStrip::show(std::optional<movement::Profile> profile, const QString& otherwise) {
    profile_ = std::move(profile);
    otherwise_ = otherwise;
    at_.reset();
    QStringList all{otherwise};
    if (profile_) {
        all = {tr("From %1 to %2, steep parts: %3")
                   .arg(metres(profile_->lowest), metres(profile_->highest))
                   .arg(profile_->steep.size())};
    }
    setAccessibleDescription(all.join(QLatin1Char(' ')));
    update();
}

QRectF ProfileStrip::field() const {
    return QRectF(rect()).adjusted(kSide, kOver, -kSide, -kUnder);
}

QPointF ProfileStrip::spotOf(Metres ground, Metres height) const {
    const QRectF inside = field();
    const Metres rise = std::max(profile_->highest - profile_->lowest, kLeastHeight);
    const double along = length(*profile_).value() > 0 ? ground / length(*profile_) : 0;
    return {inside.left() + along * inside.width(),
            inside.bottom() - (height - profile_->lowest) / rise * inside.height()};
}

double ProfileStrip::timesTooHigh() const {
    const QRectF inside = field();
    const Metres rise = std::max(profile_->highest - profile_->lowest, kLeastHeight);
    return length(*profile_) / rise * inside.height() / inside.width();
}

QString ProfileStrip::words() const {
    if (!profile_ || !at_) {
        return {};
    }
    const movement::ProfileSpot& spot = profile_->spots[*at_];
    const movement::ProfileMark* last = nullptr;
    for (const movement::ProfileMark& mark : profile_->marks) {
        const bool isPoint = mark.kind == movement::ProfileMark::Kind::RoutePoint;
        last = isPoint && mark.ground <= spot.ground ? &mark : last;
    }
    QString words = last == nullptr ? metres(spot.ground)
                                    : tr("%1 after %2").arg(metres(spot.ground - last->ground), text(last->label));
    words += tr(", height %1").arg(spot.height ? metres(*spot.height) : tr("unknown"));
    for (const movement::SteepPart& part : profile_->steep) {
        if (part.from <= spot.ground && spot.ground <= part.to) {
            const QString slope = text(numberText(std::abs(part.steepest) * 100, 0));
            words += part.steepest > 0 ? tr(", up to %1 % up").arg(slope) : tr(", up to %1 % down").arg(slope);
            break;
        }
    }
    return words;
}

void ProfileStrip::paintScale(QPainter& painter) const {
    const look::Colours c = look::colours(light_);
    const QRectF inside = field();
    painter.setFont(look::face(11));
    painter.setPen(c.inkTwo);
    for (const Metres height : {profile_->lowest, profile_->highest}) {
        const double y = spotOf(Metres(0), height).y();
        painter.fillRect(QRectF(inside.left(), y, inside.width(), 1), c.rule);
        painter.setPen(c.inkTwo);
        painter.drawText(QRectF(0, y - 8, kSide - 6, 16), Qt::AlignRight | Qt::AlignVCenter, metres(height));
        if (profile_->highest == profile_->lowest) {
            break;
        }
    }
    painter.drawText(QRectF(inside.right() + 6, inside.bottom() - 8, kSide, 16), Qt::AlignLeft | Qt::AlignVCenter,
                     metres(length(*profile_)));
}

void ProfileStrip::paintGround(QPainter& painter) const {
    const look::Colours c = look::colours(light_);
    const auto isSteep = [this](Metres ground) {
        return std::any_of(profile_->steep.begin(), profile_->steep.end(),
                           [&](const movement::SteepPart& part) { return part.from <= ground && ground < part.to; });
    };
    for (std::size_t n = 1; n < profile_->spots.size(); ++n) {
        const movement::ProfileSpot& a = profile_->spots[n - 1];
        const movement::ProfileSpot& b = profile_->spots[n];
        if (a.height && b.height) {  // what the model does not know is a gap
            painter.setPen(QPen(c.ink, isSteep(a.ground) ? 4 : 1.5, Qt::SolidLine, Qt::RoundCap));
            painter.drawLine(spotOf(a.ground, *a.height), spotOf(b.ground, *b.height));
        }
    }
}

void ProfileStrip::paintMarks(QPainter& painter) const {
    const look::Colours c = look::colours(light_);
    const QRectF inside = field();
    double freeFrom[2] = {0, 0};  // a row of labels each, so that neighbours do not run into each other
    for (const movement::ProfileMark& mark : profile_->marks) {
        const bool isPoint = mark.kind == movement::ProfileMark::Kind::RoutePoint;
        const QPointF foot = spotOf(mark.ground, mark.height.value_or(profile_->lowest));
        painter.setFont(look::face(11, isPoint ? look::Weight::Bold : look::Weight::Regular));
        const double wide = painter.fontMetrics().horizontalAdvance(text(mark.label));
        const double left = std::clamp(foot.x() - wide / 2, 2.0, std::max(2.0, width() - wide - 2));
        const int row = freeFrom[0] <= left ? 0 : freeFrom[1] <= left ? 1 : -1;
        const double top = row == 1 ? 20 : 4;
        painter.setPen(QPen(isPoint ? c.ink : c.inkTwo, 1, isPoint ? Qt::SolidLine : Qt::DashLine));
        painter.drawLine(QPointF(foot.x(), row < 0 ? inside.top() : top + 15), foot);
        if (row >= 0) {
            painter.drawText(QRectF(left, top, wide + 2, 14), Qt::AlignLeft | Qt::AlignVCenter, text(mark.label));
            freeFrom[row] = left + wide + 6;
        }
    }
}

void ProfileStrip::paintHand(QPainter& painter) const {
    const look::Colours c = look::colours(light_);
    const QRectF foot(kSide, height() - kUnder + 6, width() - 2 * kSide, 18);
    painter.setFont(look::face(12, at_ ? look::Weight::Bold : look::Weight::Regular));
    painter.setPen(at_ ? c.ours : c.inkTwo);
    if (!at_) {
        painter.drawText(foot, Qt::AlignLeft | Qt::AlignVCenter,
                         tr("%1 times too high; thick: steep from 14 %; point at it here or on the table")
                             .arg(text(numberText(timesTooHigh(), 0))));
        return;
    }
    painter.drawText(foot, Qt::AlignLeft | Qt::AlignVCenter, words());
    const movement::ProfileSpot& spot = profile_->spots[*at_];
    const QPointF place = spotOf(spot.ground, spot.height.value_or(profile_->lowest));
    painter.setPen(QPen(c.ours, 1));
    painter.drawLine(QPointF(place.x(), field().top()), QPointF(place.x(), field().bottom()));
    painter.setPen(QPen(c.ours, 2));
    painter.drawEllipse(place, 4, 4);
}

void ProfileStrip::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const look::Colours c = look::colours(light_);
    painter.fillRect(rect(), c.card);
    if (!profile_ || profile_->spots.empty()) {
        painter.setFont(look::face(12));
        painter.setPen(c.ink);
        painter.drawText(rect().adjusted(12, 12, -12, -12), Qt::TextWordWrap, otherwise_);
        return;
    }
    paintScale(painter);
    paintMarks(painter);
    paintGround(painter);
    paintHand(painter);
    if (hasFocus()) {
        painter.setPen(QPen(c.ours, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(rect().adjusted(1, 1, -1, -1));
    }
}

void ProfileStrip::point(std::optional<std::size_t> at) {
    if (at_ != at) {
        at_ = at;
        update();
    }
}

void ProfileStrip::showNear(geodesy::PlanePoint onGrid, Metres reach) {
    std::optional<std::size_t> nearest;
    double away = reach.value();
    for (std::size_t n = 0; profile_ && n < profile_->spots.size(); ++n) {
        const geodesy::PlanePoint& spot = profile_->spots[n].onGrid;
        const double off =
            std::hypot((spot.easting - onGrid.easting).value(), (spot.northing - onGrid.northing).value());
        if (off <= away) {
            away = off;
            nearest = n;
        }
    }
    point(nearest);
}

void ProfileStrip::mouseMoveEvent(QMouseEvent* event) {
    if (!profile_ || profile_->spots.empty()) {
        return;
    }
    const QRectF inside = field();
    const double share = std::clamp((event->position().x() - inside.left()) / inside.width(), 0.0, 1.0);
    const Metres ground = length(*profile_) * share;
    const auto after =
        std::lower_bound(profile_->spots.begin(), profile_->spots.end(), ground,
                         [](const movement::ProfileSpot& spot, Metres place) { return spot.ground < place; });
    const auto last = static_cast<std::ptrdiff_t>(profile_->spots.size()) - 1;
    point(static_cast<std::size_t>(std::min(after - profile_->spots.begin(), last)));
    Q_EMIT pointedAt(profile_->spots[*at_].onGrid);
}

void ProfileStrip::leaveEvent(QEvent* /*event*/) {
    point(std::nullopt);
    Q_EMIT pointedAt(std::nullopt);
}

void ProfileStrip::keyPressEvent(QKeyEvent* event) {
    const int step = event->key() == Qt::Key_Right ? 1 : event->key() == Qt::Key_Left ? -1 : 0;
    if (step == 0 || !profile_ || profile_->spots.empty()) {
        QWidget::keyPressEvent(event);
        return;
    }
    const auto last = static_cast<std::ptrdiff_t>(profile_->spots.size()) - 1;
    const auto now = static_cast<std::ptrdiff_t>(at_.value_or(0));
    point(static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(now + step, 0, last)));
    setAccessibleDescription(words());
    Q_EMIT pointedAt(profile_->spots[*at_].onGrid);
}

}  // namespace crosstick::march
