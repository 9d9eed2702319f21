// The table's hand: pointer and keys become events for the tool, its answers edits of the work.
#include <cmath>

#include <QKeyEvent>
#include <QLineF>
#include <QMouseEvent>
#include <QWheelEvent>

#include "ui/table/light_table.h"
#include "ui/tools/hand_tool.h"

namespace crosstick::table {
namespace {

constexpr double kReach = 9;  ///< pixels beside a thing that still mean it

}  // namespace

std::vector<plan::FilmPtr> LightTable::shownFilms() const {
    std::vector<plan::FilmPtr> films = work_.filmsOnTable();
    std::erase_if(films, [this](const plan::FilmPtr& film) { return !work_.look(film->id).shown; });
    return films;
}

tools::Ground LightTable::ground() const {
    tools::Ground ground{
        work_.committed(), work_.workingFilm().value_or(plan::FilmId{}), shownFilms(),
        work_.selected(),  Metres(kReach / view_.zoom().value()),        [this] { return work_.newId(); }};
    ground.touch = touch();
    ground.onPaper = [this](geodesy::PlanePoint at) { return onPaper(at); };
    return ground;
}

void LightTable::setTool(std::unique_ptr<tools::Tool> tool) {
    drawing_ = tool != nullptr;
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

void LightTable::finishTool() {
    tell(tools::Event::Kind::Finish, pointer_, Qt::NoModifier, false);
}

void LightTable::renewTool() {
    tell(tools::Event::Kind::Move, pointer_, Qt::NoModifier, false);
}

void LightTable::apply(const tools::Reply& reply) {
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
    if (reply.refused) {
        Q_EMIT refused(*reply.refused);
    }
    if (reply.commit && reply.commit->named) {
        Q_EMIT labelWanted();
    }
    if (reply.done) {
        setTool(nullptr);
        Q_EMIT toolDone();
    }
    update();
}

void LightTable::tell(tools::Event::Kind kind, QPointF at, Qt::KeyboardModifiers modifiers, bool held) {
    const auto place = work_.isOpen() ? inPlan(at) : std::nullopt;
    if (!place) {
        return;
    }
    apply(tool_->take({kind, *place, held, modifiers.testFlag(Qt::ShiftModifier)}, ground()));
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
        if (event->pointingDevice()->type() == QInputDevice::DeviceType::Stylus) {
            pen_ = event->position();
            hold_.start();
        }
        tell(tools::Event::Kind::Press, event->position(), event->modifiers(), true);
        if (!drawing_ && !work_.selected()) {  // bare sheet under the hand: it is pushed about
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
    tell(tools::Event::Kind::Move, pointer_, event->modifiers(), event->buttons().testFlag(Qt::LeftButton));
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
    if (!work_.isOpen() || drawing_ || shownFilms().empty()) {
        return QWidget::focusNextPrevChild(next);
    }
    Q_EMIT nextWanted(next ? 1 : -1);
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
            QWidget::keyPressEvent(event);
    }
}

void LightTable::keyReleaseEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
        spaceHeld_ = false;
        setCursor(drawing_ ? Qt::CrossCursor : Qt::ArrowCursor);
    }
    QWidget::keyReleaseEvent(event);
}

void LightTable::leaveEvent(QEvent* /*event*/) {
    pointerInside_ = false;
    update();
}

}  // namespace crosstick::table
