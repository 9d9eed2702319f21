#include "ui/brief/brief_view.h"

#include <algorithm>
#include <cmath>
#include <map>

#include <QAccessible>
#include <QKeyEvent>
#include <QPainter>
#include <QStyle>

#include "core/movement/paper_figures.h"
#include "ui/brief/tags.h"
#include "ui/brief/why_tag.h"
#include "ui/look/spoken.h"
#include "ui/table/hand_words.h"

namespace crosstick::brief {
namespace {

constexpr int kLayingMs = 160;
constexpr double kRing = 24;  ///< across
constexpr double kRingPen = 2.5;
constexpr double kRingStep = 16;
constexpr double kPan = 60;
constexpr double kNearer = 1.25;
constexpr double kQuietFar = 60;  ///< farther off a tag without a why is left out
constexpr double kClick = 4;      ///< pixels that a press may slip and still be a click

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

QString nameOf(const plan::Plan& plan, const plan::ItemId& item) {
    if (const plan::MeasurePtr measure = plan.measure(item)) {
        const measures::Entry* entry = measures::find(measure->kind);
        const QString label = text(movement::label(*measure));
        return label.isEmpty() && entry != nullptr ? look::spoken(entry->name) : label;
    }
    const plan::RoutePtr route = plan.route(item);
    return route ? text(movement::routeTitle(route->name)) : QString();
}

/// From a spot to the nearest edge of a place.
double away(const QRectF& place, QPointF spot) {
    const QPointF edge(std::clamp(spot.x(), place.left(), place.right()),
                       std::clamp(spot.y(), place.top(), place.bottom()));
    return QLineF(spot, edge).length();
}

/// The middle of a line along its length, the middle of an area, a point itself.
QPointF middleOf(const std::vector<QPointF>& points) {
    double length = 0;
    for (std::size_t n = 1; n < points.size(); ++n) {
        length += QLineF(points[n - 1], points[n]).length();
    }
    double left = length / 2;
    for (std::size_t n = 1; n < points.size(); ++n) {
        const QLineF piece(points[n - 1], points[n]);
        if (left <= piece.length()) {
            return piece.length() > 0 ? piece.pointAt(left / piece.length()) : piece.p1();
        }
        left -= piece.length();
    }
    return points.front();
}

}  // namespace

BriefView::BriefView(work::Work& work, table::LightTable& table, QWidget* parent)
    : QWidget(parent), work_(work), table_(table) {
    setAccessibleName(tr("Brief"));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setCursor(Qt::BlankCursor);
    laying_.setDuration(kLayingMs);
    laying_.setStartValue(0.0);
    laying_.setEndValue(1.0);
    connect(&laying_, &QVariantAnimation::valueChanged, this, [this] { update(); });
    connect(&laying_, &QVariantAnimation::finished, this, [this] {
        before_ = {};
        update();
    });
    connect(&table_, &table::LightTable::filmsLaid, this, [this] {
        if (isLaying() && laying_.state() != QAbstractAnimation::Running && table_.isSettled()) {
            laying_.start();
        }
    });
    table_.installEventFilter(this);
    hide();
}

void BriefView::setLight(look::Light light) {
    light_ = light;
    before_ = {};
    update();
}

void BriefView::begin() {
    telling_.emplace(work_.committed());
    kept_ = table_.view();
    ground_ = table_.inked();
    ring_.reset();
    before_ = {};
    show();
    raise();
    setFocus();
    table_.lieOnly(telling_->lies());
    if (ground_) {
        table_.show(*ground_);
    }
    setAccessibleDescription(words().title);
    update();
}

void BriefView::end() {
    hide();
    telling_.reset();
    before_ = {};
    table_.lieOnly(std::nullopt);
    // What lay in the upper left corner lies there again, whatever size the table has by now.
    const table::Area& area = table_.view().area();
    table_.setView(kept_->in(area).centredOn(kept_->place(area.middle())));
    Q_EMIT ended();
}

void BriefView::take(Key key) {
    const std::vector<plan::FilmId> before = telling_->lies();
    telling_->take(key);
    if (telling_->isOver()) {
        return end();
    }
    tell(before);
    if (const auto item = telling_->pointed()) {
        pointAt(*item);
    }
}

/// Lays what is to lie. A film that comes down over the others is seen to; whatever else changes is there at once.
void BriefView::tell(const std::vector<plan::FilmId>& before) {
    const std::vector<plan::FilmId> lies = telling_->lies();
    if (lies != before) {
        const bool grows = lies.size() > before.size();
        const bool moves = style()->styleHint(QStyle::SH_Widget_Animation_Duration, nullptr, this) > 0;
        laying_.stop();
        before_ = grows && moves ? table_.grab() : QPixmap();
        table_.lieOnly(lies);
    }
    setAccessibleDescription(words().title);
    QAccessibleEvent told(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&told);
    update();
}

StripWords BriefView::words() const {
    StripWords words;
    if (!telling_) {
        return words;
    }
    const plan::Plan& plan = telling_->plan();
    const Step& step = telling_->step();
    QString phaseName;
    for (const plan::Phase& phase : plan.phases()) {
        words.phases.push_back(phase.number);
        phaseName = phase.number == step.phase ? text(phase.name) : phaseName;
    }
    words.phase = telling_->place() == 0 ? 0 : step.phase;
    const plan::FilmPtr film = step.laid ? plan.film(*step.laid) : nullptr;
    const bool isSheet = telling_->lies().empty();
    const QString sheet = plan.sheets().empty() ? text(plan.heading().name) : text(plan.sheets().front()->name);
    words.title = isSheet ? (sheet.isEmpty() ? tr("The sheet") : sheet) : film ? text(film->name) : phaseName;
    words.state = tr("%1 of %2").arg(telling_->place() + 1).arg(telling_->steps());
    if (words.phase != 0 && !phaseName.isEmpty()) {
        words.state = phaseName + QStringLiteral(" \u00b7 ") + words.state;
    }
    const auto silent = static_cast<int>(telling_->unexplained().size());
    const bool tellsWhys = telling_->showsWhys() && !isSheet;
    words.keys = tellsWhys && telling_->reasons().empty() ? tr("No why is written here")
                 : tellsWhys && silent > 0 ? tr("%n without a why; Space on, W why, Esc end", nullptr, silent)
                                           : tr("Space on, W why, Esc end");
    return words;
}

QRectF BriefView::sheetRoom() const {
    const table::Area& area = table_.view().area();
    return {area.left, area.top, area.width, area.height};
}

/// The table has another size: what is to be seen is seen as large as it holds, once it has laid itself out.
bool BriefView::eventFilter(QObject* watched, QEvent* event) {
    if (watched == &table_ && event->type() == QEvent::Resize && telling_) {
        before_ = {};
        QMetaObject::invokeMethod(
            this,
            [this] {
                if (telling_ && ground_) {
                    table_.show(*ground_);
                }
            },
            Qt::QueuedConnection);
    }
    return QWidget::eventFilter(watched, event);
}

void BriefView::lookAt(const table::View& view) {
    ground_.reset();
    before_ = {};
    table_.setView(view);
    update();
}

void BriefView::moveRing(QPointF to) {
    const QRectF room = sheetRoom();
    ring_ = QPointF(std::clamp(to.x(), room.left(), room.right()), std::clamp(to.y(), room.top(), room.bottom()));
    update();
}

std::optional<QPointF> BriefView::spotOf(const plan::ItemId& item) const {
    const plan::MeasurePtr measure = telling_->plan().measure(item);
    std::vector<QPointF> points;
    if (measure && measure->anchor == plan::Anchor::Paper) {
        points = table_.blockCorners(item);
    } else {
        for (const geodesy::PlanePoint place : table::pointsOf(telling_->plan(), item)) {
            if (const auto spot = table_.spotOf(place)) {
                points.emplace_back(spot->x, spot->y);
            }
        }
    }
    return points.empty() ? std::nullopt : std::optional(middleOf(points));
}

void BriefView::pointAt(const plan::ItemId& item) {
    if (const auto spot = spotOf(item)) {
        if (!sheetRoom().contains(*spot)) {
            const table::View& view = table_.view();
            lookAt(view.dragged({spot->x(), spot->y()}, view.area().middle()));
        }
        moveRing(spotOf(item).value_or(*spot));
    }
}

void BriefView::paintWhys(QPainter& painter, const look::Colours& c) const {
    const auto pointed = telling_->pointed();
    std::vector<TagWish> wishes;
    std::vector<WhyTag> tags;
    for (const plan::ItemId& item : telling_->reasons()) {
        const auto spot = telling_->showsWhys() || item == pointed ? spotOf(item) : std::nullopt;
        if (spot) {
            const WhyTag tag{nameOf(telling_->plan(), item), text(whyOf(telling_->plan(), item))};
            const auto turn =
                item == pointed ? 0 : static_cast<std::ptrdiff_t>(wishes.size());  // it has its place first
            wishes.insert(wishes.begin() + turn, {*spot, tag.size()});
            tags.insert(tags.begin() + turn, tag);
        }
    }
    for (const plan::ItemId& item : telling_->showsWhys() ? telling_->unexplained() : std::vector<plan::ItemId>{}) {
        if (const auto spot = spotOf(item)) {  // they take the room that the others leave
            const WhyTag tag{nameOf(telling_->plan(), item)};
            wishes.push_back({*spot, tag.size()});
            tags.push_back(tag);
        }
    }
    auto places = layTags(wishes, sheetRoom());
    for (std::size_t n = 0; n < places.size(); ++n) {
        if (tags[n].why.isEmpty() && places[n] && away(*places[n], wishes[n].spot) > kQuietFar) {
            places[n].reset();  // what says nothing is not sought over the map: the strip counts it
        }
    }
    for (std::size_t n = 0; n < places.size(); ++n) {
        if (places[n]) {
            const QRectF& place = *places[n];
            const QPointF spot = wishes[n].spot;
            const QPointF edge(std::clamp(spot.x(), place.left(), place.right()),
                               std::clamp(spot.y(), place.top(), place.bottom()));
            painter.setPen(QPen(tags[n].why.isEmpty() ? c.rule : c.ours, 1));
            painter.drawLine(spot, edge);
        }
    }
    for (std::size_t n = 0; n < places.size(); ++n) {
        if (places[n]) {
            tags[n].paint(painter, QRectF(places[n]->toAlignedRect()), c);
        }
    }
}

void BriefView::paintEvent(QPaintEvent* /*event*/) {
    if (!telling_) {
        return;
    }
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const look::Colours c = look::colours(light_);
    if (isLaying()) {  // the new picture is seen as far as the film has come down
        const bool runs = laying_.state() == QAbstractAnimation::Running;
        const double down = runs ? laying_.currentValue().toDouble() * table_.height() : 0;
        painter.save();
        painter.setClipRect(QRectF(0, down, width(), table_.height() - down));
        painter.drawPixmap(0, 0, before_);
        painter.restore();
    } else {
        painter.save();
        painter.setClipRect(sheetRoom());
        paintWhys(painter, c);
        painter.restore();
    }
    if (ring_) {
        for (const auto& [colour, pen] : {std::pair(c.well, kRingPen + 2.5), std::pair(c.ours, kRingPen)}) {
            painter.setPen(QPen(colour, pen));
            painter.drawEllipse(*ring_, kRing / 2, kRing / 2);
        }
    }
    painter.setRenderHint(QPainter::Antialiasing, false);
    paintStrip(painter, QRect(0, height() - kStripHigh, width(), kStripHigh), words(), light_);
}

/// Every key is the brief's own, but for those of the light and the end of the program.
bool BriefView::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* key = static_cast<QKeyEvent*>(event);
        const bool isLight = key->key() == Qt::Key_L && key->modifiers().testFlag(Qt::ControlModifier);
        const bool isQuit = key->key() == Qt::Key_Q && key->modifiers() == Qt::ControlModifier;
        event->setAccepted(!isLight && !isQuit);
        return event->isAccepted();
    }
    if (event->type() == QEvent::KeyPress) {  // before Tab is taken for going from control to control
        keyPressEvent(static_cast<QKeyEvent*>(event));
        return event->isAccepted();
    }
    return QWidget::event(event);
}

/// Keys that move the ring or the view and tell nothing.
bool BriefView::takeOwn(const QKeyEvent& event) {
    const bool ring = event.modifiers().testFlag(Qt::ShiftModifier);
    const bool view = event.modifiers().testFlag(Qt::ControlModifier);
    const std::map<int, QPointF> ways{
        {Qt::Key_Left, {-1, 0}}, {Qt::Key_Right, {1, 0}}, {Qt::Key_Up, {0, -1}}, {Qt::Key_Down, {0, 1}}};
    if (const auto way = ways.find(event.key()); way != ways.end() && (ring || view)) {
        const table::Spot middle = table_.view().area().middle();
        if (ring) {
            moveRing(ring_.value_or(QPointF(middle.x, middle.y)) + way->second * kRingStep);
        } else {
            lookAt(
                table_.view().dragged(middle, {middle.x - way->second.x() * kPan, middle.y - way->second.y() * kPan}));
        }
        return true;
    }
    switch (event.key()) {
        case Qt::Key_Plus:
        case Qt::Key_Equal:
            table_.zoomBy(kNearer);
            break;
        case Qt::Key_Minus:
            table_.zoomBy(1 / kNearer);
            break;
        case Qt::Key_0:
            table_.fitSheet();
            break;
        default:
            return false;
    }
    lookAt(table_.view());
    return true;
}

void BriefView::keyPressEvent(QKeyEvent* event) {
    static const std::map<int, Key> kKeys{
        {Qt::Key_Space, Key::Forward},  {Qt::Key_Right, Key::Forward},    {Qt::Key_Return, Key::Forward},
        {Qt::Key_Enter, Key::Forward},  {Qt::Key_PageDown, Key::Forward}, {Qt::Key_Left, Key::Back},
        {Qt::Key_Backspace, Key::Back}, {Qt::Key_PageUp, Key::Back},      {Qt::Key_Down, Key::NextPhase},
        {Qt::Key_Up, Key::PhaseBefore}, {Qt::Key_Home, Key::First},       {Qt::Key_End, Key::Last},
        {Qt::Key_W, Key::Whys},         {Qt::Key_Tab, Key::NextWhy},      {Qt::Key_Backtab, Key::WhyBefore},
        {Qt::Key_S, Key::SheetAlone},   {Qt::Key_Escape, Key::End},       {Qt::Key_F11, Key::End}};
    event->accept();
    if (!telling_ || takeOwn(*event)) {
        return;
    }
    if (event->key() >= Qt::Key_1 && event->key() <= Qt::Key_9) {
        const std::vector<plan::FilmId> before = telling_->lies();
        telling_->turnTo(event->key() - Qt::Key_0);
        tell(before);
    } else if (const auto key = kKeys.find(event->key()); key != kKeys.end()) {
        take(key->second);
    }
}

void BriefView::mousePressEvent(QMouseEvent* event) {
    pressed_ = event->button() == Qt::LeftButton ? std::optional(event->position()) : std::nullopt;
    panned_.reset();
}

void BriefView::mouseMoveEvent(QMouseEvent* event) {
    const QPointF at = event->position();
    if (pressed_ && event->buttons().testFlag(Qt::LeftButton)) {
        const QPointF from = panned_.value_or(*pressed_);
        if (panned_ || QLineF(*pressed_, at).length() > kClick) {
            lookAt(table_.view().dragged({from.x(), from.y()}, {at.x(), at.y()}));
            panned_ = at;
        }
    }
    moveRing(at);
}

/// A click lays the next film on, as the button of a pointer in the hand does.
void BriefView::mouseReleaseEvent(QMouseEvent* event) {
    const bool clicked = pressed_ && !panned_;
    pressed_.reset();
    panned_.reset();
    if (telling_ && clicked) {
        take(Key::Forward);
    } else if (telling_ && event->button() == Qt::RightButton) {
        take(Key::Back);
    }
}

void BriefView::wheelEvent(QWheelEvent* event) {
    QCoreApplication::sendEvent(&table_, event);
    lookAt(table_.view());
    event->accept();
}

void BriefView::leaveEvent(QEvent* /*event*/) {
    ring_.reset();
    update();
}

}  // namespace crosstick::brief
