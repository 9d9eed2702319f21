// The table's hand: pointer and keys become events for the tool, its answers edits of the work.
#include <cmath>

#include <QCoreApplication>
#include <QGuiApplication>
#include <QKeyEvent>
#include <QLineF>
#include <QMouseEvent>
#include <QWheelEvent>

#include "core/film/registration.h"
#include "core/plan/faults.h"
#include "ui/table/hand_words.h"
#include "ui/table/light_table.h"
#include "ui/tools/hand_tool.h"

namespace crosstick::table {
namespace {

constexpr double kReach = 9;  ///< pixels beside a thing that still mean it

/// A letter or a figure, and no command.
bool isTyped(const QKeyEvent& event) {
    const bool isCommand = event.modifiers().testFlag(Qt::ControlModifier) ||
                           event.modifiers().testFlag(Qt::AltModifier) || event.modifiers().testFlag(Qt::MetaModifier);
    return !isCommand && !event.text().isEmpty() && event.text().front().isLetterOrNumber();
}

/// Would a tool for drawing put something on the film at such an event?
bool draws(tools::Event::Kind kind) {
    using Kind = tools::Event::Kind;
    return kind == Kind::Press || kind == Kind::Again || kind == Kind::Finish;
}

}  // namespace

Metres LightTable::reach() const {
    return Metres(kReach / view_.zoom().value());
}

tools::Ground LightTable::ground() const {
    tools::Ground ground{work_.committed(), work_.workingFilm().value_or(plan::FilmId{}),
                         work_.filmsSeen(), work_.selected(),
                         reach(),           [this] { return work_.newId(); }};
    ground.touch = touch();
    ground.onPaper = [this](geodesy::PlanePoint at) { return onPaper(at); };
    ground.selection = work_.selection();
    ground.up = view_.up();
    return ground;
}

void LightTable::setSnapWish(drafting::SnapWish wish) {
    snapWish_ = wish;
    renewTool();
}

/// What the tool's hand is drawn to there: in the plan as it is committed, whatever the hand holds.
std::optional<drafting::Snap> LightTable::snapAt(geodesy::PlanePoint inPlan) const {
    const auto snaps = tool_->snaps();
    if (!snaps) {
        return std::nullopt;
    }
    const auto films = work_.filmsSeen();
    drafting::SnapGround ground{work_.committed(), films, {}, snapWish_, snaps->inHand};
    const plan::FilmPtr film = work_.workingFilm() ? work_.committed().film(*work_.workingFilm()) : nullptr;
    if (const auto registration = film && film->inset ? film->inset->place : work_.committed().registration()) {
        for (const geodesy::PlanePoint tick : registration->ticks) {
            if (const auto place = work_.grid()->inPlan(tick)) {
                ground.ticks.push_back(*place);
            }
        }
    }
    ground.grid = [this](geodesy::PlanePoint place) -> std::optional<geodesy::PlanePoint> {
        const plan::SheetPtr sheet = work_.plan().sheets().empty() ? nullptr : work_.plan().sheets().front();
        const Metres printed = film::gridInterval(sheet ? sheet->scale : Scale{});
        const Metres interval = printed / 10 > reach() * 4 ? printed / 10 : printed;  // tenths, where they are apart
        const auto there = onGrid(place);
        const auto line = there ? drafting::onGridLines(*there, interval, reach()) : std::nullopt;
        const auto back = line ? work_.grid()->inPlan(*line) : Result<geodesy::PlanePoint>{};
        return line && back ? std::optional(*back) : std::nullopt;
    };
    return drafting::snapTo(ground, inPlan, reach());
}

void LightTable::setTool(std::unique_ptr<tools::Tool> tool) {
    drawing_ = tool != nullptr;
    wipes_ = false;
    if (whole_) {
        showCollar(std::nullopt);
    }
    tool_ = drawing_ ? std::move(tool) : std::make_unique<tools::HandTool>();
    work_.setWetRoute(std::nullopt);
    setCursor(drawing_ ? Qt::CrossCursor : Qt::ArrowCursor);
    if (drawing_) {
        tell(tools::Event::Kind::Move, pointer_, Qt::NoModifier, false);
    }
    update();
}

/// Drawing on a pinned film is answered in words; what is wet already stays in the hand, for another film.
bool LightTable::isHeldFast() {
    const plan::FilmPtr film = drawing_ && work_.workingFilm() ? work_.plan().film(*work_.workingFilm()) : nullptr;
    if (!film || !film->pinned || tool_->wet().belongs != tools::Wet::Belongs::ToTheFilm) {
        return false;
    }
    Q_EMIT refused(Error{plan::kFilmPinned, {{"film", film->name}}});
    return true;
}

void LightTable::finishTool() {
    tell(tools::Event::Kind::Finish, pointer_, Qt::NoModifier, false);
}

void LightTable::takeBackPoint() {
    tell(tools::Event::Kind::TakeBack, pointer_, Qt::NoModifier, false);
}

void LightTable::holdHandAt(std::optional<geodesy::PlanePoint> inPlan) {
    typedHand_ = inPlan;
    if (inPlan && drawing_) {
        apply(tool_->take({tools::Event::Kind::Move, *inPlan, false, false}, ground()));
        renewPreview();
    }
    update();
}

void LightTable::pressAt(geodesy::PlanePoint inPlan) {
    const auto place = onGrid(inPlan);
    if (!place || isHeldFast()) {
        return;
    }
    if (!view_.area().contains(view_.spot(*place))) {
        centreOn(*place);
    }
    // A typed grid means its place and what stands on it, however much of the ground a hand would reach.
    constexpr Metres kTypedReach{15};
    tools::Ground there = ground();
    there.reach = std::min(there.reach, kTypedReach);
    apply(tool_->take({tools::Event::Kind::Press, inPlan, true, false}, there));
    renewPreview();
}

std::optional<geodesy::PlanePoint> LightTable::middleInPlan() const {
    const Spot middle = view_.area().middle();
    return inPlan({middle.x, middle.y});
}

std::optional<geodesy::PlanePoint> LightTable::pointedInPlan() const {
    return pointerInside_ ? inPlan(pointer_) : std::nullopt;
}

void LightTable::renewTool() {
    tell(tools::Event::Kind::Move, pointer_, Qt::NoModifier, false);
}

bool LightTable::endToolAs(const measures::Entry& kind) {
    auto reply = drawing_ ? tool_->endAs(kind, ground()) : std::nullopt;
    if (reply) {
        apply(*reply);
    }
    return reply.has_value();
}

std::optional<geodesy::PlanePoint> LightTable::measuredFrom() const {
    if (drawing_) {
        const tools::Wet wet = tool_->wet();
        return wet.from && *wet.from < wet.line.size() ? std::optional(wet.line[*wet.from]) : std::nullopt;
    }
    const auto item = work_.selected();
    const std::size_t held = item ? tool_->heldPoint(*item).value_or(0) : 0;
    const bool isThere =
        item && held < tools::pointsOf(work_.committed(), *item) && pointsOf(work_.committed(), *item).size() > held;
    return isThere ? std::optional(tools::pointOf(work_.committed(), *item, held)) : std::nullopt;
}

void LightTable::press(geodesy::PlanePoint inPlan) {
    apply(tool_->take({tools::Event::Kind::Press, inPlan}, ground()));
    renewPreview();
}

/// What the hand would do to a pinned film is not shown even as a draft: it lets go and is told why.
bool LightTable::isRefused(const tools::Reply& reply) {
    const plan::Plan* next = reply.commit ? &reply.commit->plan : reply.draft ? &*reply.draft : nullptr;
    const auto why = next != nullptr ? work_.refusal(*next) : std::nullopt;
    if (!why) {
        return false;
    }
    Q_EMIT refused(*why);
    if (!drawing_) {
        (void)tool_->take({tools::Event::Kind::Cancel, {}, false, false}, ground());
        work_.setDraft(std::nullopt);
    }
    update();
    return true;
}

void LightTable::apply(const tools::Reply& reply) {
    if (isRefused(reply)) {
        return;
    }
    if (reply.draft) {
        work_.setDraft(reply.draft);
    } else if (reply.draftGone && !reply.commit) {
        work_.setDraft(std::nullopt);
    }
    if (reply.commit) {
        work_.setWetRoute(std::nullopt);
        work_.commit(reply.commit->plan, reply.commit->caption);
    }
    if (reply.select) {
        work_.select(*reply.select);
    }
    if (reply.selectAll) {
        work_.selectAll(*reply.selectAll);
    }
    if (reply.refused) {
        Q_EMIT refused(*reply.refused);
    }
    if (!reply.said.empty()) {
        Q_EMIT said(QCoreApplication::translate("Core", reply.said.c_str()));
    }
    if (reply.commit && reply.commit->stroke) {
        Q_EMIT strokeDrawn();
    }
    if (reply.commit && reply.commit->named) {
        Q_EMIT labelWanted();
    }
    if (reply.done) {
        setTool(nullptr);
        Q_EMIT toolDone();
        if (!reply.commit) {
            Q_EMIT givenUp();
        }
    }
    if (reply.commit) {
        Q_EMIT placed();
    }
    update();
}

void LightTable::tell(tools::Event::Kind kind, QPointF at, Qt::KeyboardModifiers modifiers, bool held) {
    const auto place = work_.isOpen() ? inPlan(at) : std::nullopt;
    if (!place || (draws(kind) && isHeldFast())) {
        return;
    }
    const bool isFree = modifiers.testFlag(Qt::ControlModifier);
    snap_ = isFree ? std::nullopt : snapAt(*place);
    const bool isSnapped = snap_.has_value();
    apply(tool_->take(
        {kind, isSnapped ? snap_->at : *place, held, modifiers.testFlag(Qt::ShiftModifier), isFree, isSnapped},
        ground()));
    if (!tool_->snaps()) {
        snap_.reset();  // the hand let go
    }
    renewPreview();
}

/// The route in hand as it would be: anew, too, when something in the plan is changed meanwhile.
void LightTable::renewPreview() {
    if (!drawing_) {
        return;
    }
    auto preview = tool_->preview(ground());
    if (preview) {
        work_.setWetRoute(std::move(preview->plan), preview->route);
    } else {
        work_.setWetRoute(std::nullopt);
    }
}

void LightTable::mousePressEvent(QMouseEvent* event) {
    setFocus();
    const bool pans = event->button() == Qt::MiddleButton || (event->button() == Qt::LeftButton && spaceHeld_);
    if (pans) {
        panFrom_ = event->position();
        setCursor(Qt::ClosedHandCursor);
    } else if (event->button() == Qt::RightButton) {
        askForMenu(event->position());
    } else if (event->button() == Qt::LeftButton) {
        // A pen that begins a line may rest on the glass; one that goes on with it ends it so.
        const bool isPen = event->pointingDevice()->type() == QInputDevice::DeviceType::Stylus;
        if (isPen && (!drawing_ || tool_->isBusy())) {
            pen_ = event->position();
            hold_.start();
        }
        tell(tools::Event::Kind::Press, event->position(), event->modifiers(), true);
        if (!drawing_ && !work_.selected() && !tool_->isBusy()) {  // bare sheet under the hand: it is pushed about
            panFrom_ = event->position();
        }
    }
}

void LightTable::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton || !drawing_ || spaceHeld_) {
        mousePressEvent(event);
        return;
    }
    tell(tools::Event::Kind::Again, event->position(), event->modifiers(), true);
}

void LightTable::mouseMoveEvent(QMouseEvent* event) {
    pointer_ = event->position();
    pointerInside_ = true;
    if (pen_ && QLineF(*pen_, pointer_).length() > Fingers::kSlip) {
        pen_.reset();
    }
    if (panFrom_) {
        setView(view_.dragged({panFrom_->x(), panFrom_->y()}, {pointer_.x(), pointer_.y()}));
        panFrom_ = pointer_;
        return;
    }
    if (!drawing_ || !typedHand_) {  // what is typed holds the hand
        tell(tools::Event::Kind::Move, pointer_, event->modifiers(), event->buttons().testFlag(Qt::LeftButton));
    }
    Q_EMIT pointedAt(view_.place({pointer_.x(), pointer_.y()}));
    update();
}

void LightTable::mouseReleaseEvent(QMouseEvent* event) {
    pen_.reset();
    if (panFrom_) {
        panFrom_.reset();
        setCursor(drawing_ ? Qt::CrossCursor : Qt::ArrowCursor);
        return;
    }
    if (event->button() == Qt::LeftButton) {
        tell(tools::Event::Kind::Release, event->position(), event->modifiers(), false);
    }
}

void LightTable::wheelEvent(QWheelEvent* event) {
    const QPointF at = event->position();
    if (event->phase() != Qt::NoScrollPhase && !event->modifiers().testFlag(Qt::ControlModifier) &&
        !event->pixelDelta().isNull()) {  // two fingers on a trackpad push the sheet
        const QPointF to = at + QPointF(event->pixelDelta());
        setView(view_.dragged({at.x(), at.y()}, {to.x(), to.y()}));
    } else {
        setView(view_.zoomedAt({at.x(), at.y()}, std::pow(1.0015, event->angleDelta().y()), kLeast, kMost));
    }
    event->accept();
}

bool LightTable::event(QEvent* event) {
    switch (event->type()) {
        case QEvent::TouchBegin:
        case QEvent::TouchUpdate:
        case QEvent::TouchEnd:
        case QEvent::TouchCancel:
            return takeTouch(*static_cast<QTouchEvent*>(event));
        case QEvent::NativeGesture: {  // two fingers on a trackpad
            const auto* gesture = static_cast<QNativeGestureEvent*>(event);
            if (gesture->gestureType() == Qt::ZoomNativeGesture) {
                setView(view_.zoomedAt({gesture->position().x(), gesture->position().y()}, 1 + gesture->value(), kLeast,
                                       kMost));
            }
            return true;
        }
        default:
            return QWidget::event(event);
    }
}

/// Tab goes from thing to thing; where there is none to the next control, as does Tab with Control always.
bool LightTable::focusNextPrevChild(bool next) {
    if (!work_.isOpen() || drawing_ || work_.filmsSeen().empty()) {
        return QWidget::focusNextPrevChild(next);
    }
    const int step = next ? 1 : -1;
    if (const auto underneath = tool_->underneath(ground(), step)) {
        work_.select(*underneath);
        tell(tools::Event::Kind::Move, pointer_, Qt::NoModifier, false);
        return true;
    }
    Q_EMIT nextWanted(step);
    return true;
}

void LightTable::keyPressEvent(QKeyEvent* event) {
    using Kind = tools::Event::Kind;
    const double pixels = event->modifiers().testFlag(Qt::ShiftModifier) ? 10 : 1;
    const auto move = [&](double right, double up) {
        if (!drawing_ && work_.selected()) {
            const Spot middle = view_.area().middle();  // as the eye sees it, however the view is turned
            const geodesy::PlanePoint from = view_.place(middle);
            const geodesy::PlanePoint to = view_.place({middle.x + right * pixels, middle.y - up * pixels});
            apply(tool_->take({Kind::Nudge, {to.easting - from.easting, to.northing - from.northing}, false, false},
                              ground()));
        } else {
            const Spot middle = view_.area().middle();
            setView(view_.dragged(middle, {middle.x - right * 60, middle.y + up * 60}));
        }
    };
    switch (event->key()) {
        case Qt::Key_Space:
            spaceHeld_ = true;
            setCursor(Qt::OpenHandCursor);
            return;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            return drawing_ ? finishTool() : Q_EMIT labelWanted();
        case Qt::Key_Backspace:
            return tell(Kind::TakeBack, pointer_, Qt::NoModifier, false);
        case Qt::Key_PageDown:
            return tell(Kind::NextPoint, pointer_, Qt::NoModifier, false);
        case Qt::Key_PageUp:
            return tell(Kind::LastPoint, pointer_, Qt::NoModifier, false);
        case Qt::Key_Control:  // the hand is free while it is down
            return tell(Kind::Move, pointer_, Qt::ControlModifier,
                        QGuiApplication::mouseButtons().testFlag(Qt::LeftButton));
        case Qt::Key_Escape:
            return tell(Kind::Cancel, pointer_, Qt::NoModifier, false);
        case Qt::Key_Left:
            return move(-1, 0);
        case Qt::Key_Right:
            return move(1, 0);
        case Qt::Key_Up:
            return move(0, 1);
        case Qt::Key_Down:
            return move(0, -1);
        default:
            isTyped(*event) && work_.isOpen() ? Q_EMIT typed(event->text()) : QWidget::keyPressEvent(event);
    }
}

void LightTable::keyReleaseEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
        spaceHeld_ = false;
        setCursor(drawing_ ? Qt::CrossCursor : Qt::ArrowCursor);
    } else if (event->key() == Qt::Key_Control) {
        tell(tools::Event::Kind::Move, pointer_, Qt::NoModifier,
             QGuiApplication::mouseButtons().testFlag(Qt::LeftButton));
    }
    QWidget::keyReleaseEvent(event);
}

void LightTable::leaveEvent(QEvent* /*event*/) {
    pointerInside_ = false;
    update();
}

}  // namespace crosstick::table
