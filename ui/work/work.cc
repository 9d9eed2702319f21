#include "ui/work/work.h"

#include "core/plan/faults.h"
#include "core/plan/pinning.h"

namespace crosstick::work {
namespace {

const plan::Plan& nothing() {
    static const plan::Plan plan;
    return plan;
}

/// Does an edit reach a route's figures? Heading, sheets, the route, or any measure (points and crossings).
bool sameForRoutes(const plan::Plan& a, const plan::Plan& b) {
    return &a.heading() == &b.heading() && &a.sheets() == &b.sheets() && &a.routes() == &b.routes() &&
           &a.measures().chunks() == &b.measures().chunks();
}

}  // namespace

Work::Work(WorkOrder order, QObject* parent)
    : QObject(parent),
      order_(std::move(order)),
      ids_(order_.seed),
      sheetGrounds_(errands_, order_.reader),
      errands_(order_.beforeErrand) {
    if (auto model = geodesy::MagneticModel::open(order_.share / "magnetic")) {
        model_ = std::move(*model);
    }
}

Work::~Work() {
    errands_.finish();
    close();
}

const plan::Plan& Work::committed() const {
    return history_ ? history_->present() : nothing();
}

const plan::Plan& Work::plan() const {
    return draft_ ? *draft_ : committed();
}

std::optional<Error> Work::figuresFault(const plan::ItemId& route) const {
    const auto found = figureFaults_.find(route);
    return found == figureFaults_.end() ? std::nullopt : std::optional(found->second);
}

bool Work::isChanged() const {
    return history_ && !(committed() == saved_);
}

void Work::commit(plan::Plan next, const std::string& caption) {
    if (!history_) {
        return;
    }
    if (const auto why = refusal(next)) {
        setDraft(std::nullopt);  // whoever asked shows the plan again as it is
        Q_EMIT refused(*why);
        return;
    }
    const plan::Plan before = plan();
    const plan::Plan committedBefore = committed();
    draft_.reset();
    keepOutlook();
    plan::Plan followed = plan::numbersFollow(committedBefore, next, inserted_);
    history_->push(refusal(followed) ? std::move(next) : std::move(followed),
                   caption);  // what is pinned keeps its numbers
    settle(before, committedBefore);
    Q_EMIT planChanged();
}

std::optional<Error> Work::refusal(const plan::Plan& next) const {
    const plan::FilmPtr pinned = plan::pinnedAgainst(committed(), next);
    return pinned ? std::optional(Error{plan::kFilmPinned, {{"film", pinned->name}}}) : std::nullopt;
}

/// What every step of the history has in its train.
void Work::settle(const plan::Plan& shown, const plan::Plan& before) {
    keepGround(before);
    renewFigures(shown);
    keepChoices();
    (void)journalStep(before);
    draftIsGone();
}

/// What waited for a drag to end: its plan was begun from paths that a save elsewhere would have changed under it.
void Work::draftIsGone() {
    if (savedWhileDragging_ && !draft_) {
        const Saved saved = *std::exchange(savedWhileDragging_, std::nullopt);
        takeSaved(saved);
    }
}

void Work::setDraft(std::optional<plan::Plan> draft) {
    const plan::Plan before = plan();
    draft_ = std::move(draft);
    renewFigures(before);
    Q_EMIT planChanged();
    draftIsGone();
}

void Work::undo() {
    if (history_ && history_->canUndo()) {
        goToStep(history_->done() - 1);
    }
}

void Work::redo() {
    if (history_ && history_->canRedo()) {
        goToStep(history_->done() + 1);
    }
}

void Work::goToStep(std::size_t done) {
    if (!history_ || done == history_->done() || done > history_->steps()) {
        return;
    }
    const plan::Plan shown = plan();
    const plan::Plan before = committed();
    draft_.reset();
    keepOutlook();
    history_->goTo(done);
    settle(shown, before);
    Q_EMIT planChanged();
    Q_EMIT tableChanged();
    comeBack();
}

void Work::keepOutlook() {
    outlooks_[history_->state()] = {selection_, working_, phase_, seen_};
    outlooks_.erase(outlooks_.begin(), outlooks_.lower_bound(history_->state() - history_->done()));
}

/// What was chosen and seen when the present state was left.
void Work::comeBack() {
    const auto held = outlooks_.find(history_->state());
    if (held == outlooks_.end()) {
        return;
    }
    const Outlook outlook = held->second;
    setPhase(outlook.phase);
    if (outlook.working) {
        setWorkingFilm(*outlook.working);
    }
    std::vector<plan::ItemId> chosen = outlook.selected;
    std::erase_if(chosen,
                  [this](const plan::ItemId& item) { return !committed().measure(item) && !committed().route(item); });
    selectAll(std::move(chosen));
    if (outlook.seen && outlook.seen != seen_) {
        Q_EMIT seenAgain(*outlook.seen);
    }
}

std::vector<std::string> Work::steps() const {
    return history_ ? history_->captions() : std::vector<std::string>{};
}

std::size_t Work::stepsDone() const {
    return history_ ? history_->done() : 0;
}

std::string Work::undoCaption() const {
    return history_ ? history_->undoCaption() : std::string{};
}

std::string Work::redoCaption() const {
    return history_ ? history_->redoCaption() : std::string{};
}

void Work::renewFigures(const plan::Plan& before) {
    const plan::Plan& now = plan();
    if (&before.measures().chunks() != &now.measures().chunks()) {
        staleTraces_ = traces_.look(now);
    }
    if (sameForRoutes(before, now)) {
        return;
    }
    figures_.clear();
    figureFaults_.clear();
    std::erase_if(pieces_, [&](const auto& kept) { return now.route(kept.first) == nullptr; });
    for (const plan::RoutePtr& route : now.routes()) {
        auto figures = grid_ ? movement::routeFigures(now, *route, *grid_, model(), heights(), pieces_[route->id])
                             : figuresOf(now, *route);
        if (figures) {
            figures_.emplace(route->id, std::move(*figures));
        } else {
            figureFaults_.emplace(route->id, figures.error());
        }
    }
}

Result<movement::RouteFigures> Work::figuresOf(const plan::Plan& plan, const plan::Route& route) const {
    return grid_ ? movement::routeFigures(plan, route, *grid_, model(), heights())
                 : movement::routeFigures(plan, route, model(), heights());
}

Result<movement::RouteFigures> Work::figuresBetween(geodesy::PlanePoint from, geodesy::PlanePoint to) const {
    plan::Route route;
    route.vertices = {from, to};
    return figuresOf(plan(), route);
}

bool Work::journalStep(const plan::Plan& before) {
    if (!journal_) {
        return beginJournal();  // it holds this step, too
    }
    const auto added = journal_->add(before, committed());
    if (!added) {
        Q_EMIT journalFailed(added.error());
    }
    return added.has_value();
}

}  // namespace crosstick::work
