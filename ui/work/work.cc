#include "ui/work/work.h"

#include <algorithm>

#include "core/files/faults.h"
#include "core/plan/edits.h"

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

/// A new file in the place of one that the user gave up in the file dialog: what stood there goes only when the new one
/// is whole.
Result<files::PlanFile> createdOver(const std::filesystem::path& target, const plan::Plan& plan, Instant now) {
    std::error_code fault;
    if (!std::filesystem::exists(target, fault)) {
        return files::PlanFile::create(target, plan, now);
    }
    std::filesystem::path draft = target;
    draft.replace_filename("." + target.filename().string() + ".draft");
    std::filesystem::remove(draft, fault);
    if (auto made = files::PlanFile::create(draft, plan, now); !made) {
        return made;
    }
    std::filesystem::rename(draft, target, fault);
    if (fault) {
        std::error_code ignored;
        std::filesystem::remove(draft, ignored);
        return fail(files::kCannotOpen, {{"file", target.string()}, {"why", fault.message()}});
    }
    return files::PlanFile::open(target, files::Access::ReadWrite);
}

bool sitsOn(const plan::Route& route, const plan::ItemId& item) {
    return std::any_of(route.stops.begin(), route.stops.end(),
                       [&](const plan::Stop& stop) { return stop.measure == item; });
}

}  // namespace

Work::Work(WorkOrder order, QObject* parent) : QObject(parent), order_(std::move(order)), ids_(order_.seed) {
    if (auto model = geodesy::MagneticModel::open(order_.share / "magnetic")) {
        model_ = std::move(*model);
    }
}

Work::~Work() {
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

void Work::takePlan(plan::Plan plan, plan::Plan saved, const std::filesystem::path& folder) {
    draft_.reset();
    folder_ = folder;
    saved_ = std::move(saved);
    history_.emplace(std::move(plan));
    selected_.reset();
    working_.reset();
    ledgerRoute_.reset();
    looks_.clear();
    phase_ = committed().phases().empty() ? 0 : committed().phases().front().number;
    openGround();
    renewFigures(nothing());
    keepChoices();
    Q_EMIT planReplaced();
    Q_EMIT selectionChanged();
}

void Work::openGround() {
    grid_.reset();
    heights_.reset();
    if (auto grid = movement::WorkGrid::of(committed())) {
        grid_.emplace(std::move(*grid));
    }
    if (const std::filesystem::path file = heightsFile(); !file.empty()) {
        if (auto heights = sheets::Elevation::open(file, committed().planeCrs())) {
            heights_ = std::move(*heights);
        }
    }
}

std::filesystem::path Work::heightsFile() const {
    if (committed().sheets().empty() || committed().sheets().front()->elevationPath.empty()) {
        return {};
    }
    const std::filesystem::path path = committed().sheets().front()->elevationPath;
    return path.is_absolute() ? path : folder_ / path;
}

Result<void> Work::open(const std::filesystem::path& file) {
    auto opened = files::PlanFile::open(file, files::Access::ReadWrite);
    if (!opened) {
        opened = files::PlanFile::open(file, files::Access::ReadOnly);  // a stick that is write-protected can be read
    }
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    close();
    planFile_ = std::make_unique<files::PlanFile>(std::move(*opened));
    file_ = std::filesystem::absolute(file);
    takePlan(planFile_->plan(), planFile_->plan(), file_.parent_path());
    beginJournal();
    return {};
}

void Work::begin(plan::Plan plan, const std::filesystem::path& folder) {
    close();
    file_.clear();
    takePlan(plan, plan::Plan{}, folder);
    beginJournal();
    (void)journalStep(plan::Plan{});
}

Result<void> Work::save(Instant now) {
    if (!planFile_) {
        return fail(files::kFileMissing, {{"file", std::string{}}});
    }
    if (auto saved = planFile_->save(committed(), now); !saved) {
        return saved;
    }
    saved_ = committed();
    if (journal_) {
        (void)journal_->restart({file_.string(), committed().id(), planFile_->saves()});
    }
    Q_EMIT tableChanged();
    return {};
}

Result<void> Work::saveAs(const std::filesystem::path& file, Instant now) {
    plan::Plan plan = committed();
    const std::filesystem::path target = std::filesystem::absolute(file);
    if (!plan.sheets().empty()) {  // the sheet stays where it is: its path is told from the plan's new place
        for (const plan::SheetPtr& held : committed().sheets()) {
            plan::Sheet sheet = *held;
            const auto from = [&](const std::string& path) {
                const std::filesystem::path given(path);
                const auto whole = given.is_absolute() ? given : folder_ / given;
                const auto seen = whole.lexically_proximate(target.parent_path());
                return path.empty() ? path : seen.begin()->string() == ".." ? whole.string() : seen.string();
            };
            sheet.path = from(sheet.path);
            sheet.elevationPath = from(sheet.elevationPath);
            if (!(sheet == *held)) {
                plan::PlanBuilder builder(plan);
                builder.put(std::move(sheet));
                plan = std::move(builder).build();
            }
        }
    }
    if (planFile_) {
        if (auto saved = planFile_->saveAs(target, plan, now); !saved) {
            return saved;
        }
    } else {
        auto made = createdOver(target, plan, now);
        if (!made) {
            return tl::unexpected(made.error());
        }
        planFile_ = std::make_unique<files::PlanFile>(std::move(*made));
    }
    file_ = target;
    folder_ = target.parent_path();
    if (!(plan == committed())) {
        history_->push(plan, "save elsewhere");
    }
    saved_ = committed();
    if (journal_) {
        std::move(*journal_).discard();
        journal_.reset();
    }
    beginJournal();
    Q_EMIT tableChanged();
    return {};
}

Result<std::size_t> Work::takeUp(const files::Leftover& leftover) {
    plan::Plan base;
    std::int64_t saves = 0;
    std::unique_ptr<files::PlanFile> file;
    if (!leftover.base.file.empty()) {
        auto opened = files::PlanFile::open(leftover.base.file, files::Access::ReadWrite);
        if (!opened) {
            return tl::unexpected(opened.error());
        }
        base = opened->plan();
        saves = opened->saves();
        file = std::make_unique<files::PlanFile>(std::move(*opened));
    }
    auto recovered = files::replay(leftover.journal, base, saves);
    if (!recovered) {
        return tl::unexpected(recovered.error());
    }
    close();
    planFile_ = std::move(file);
    file_ = leftover.base.file;
    takePlan(base, base, file_.parent_path());
    beginJournal();
    history_->push(recovered->plan, "what was found");
    openGround();
    renewFigures(plan::Plan{});
    keepChoices();
    if (journalStep(base)) {  // the old journal goes only when the new one holds its steps
        std::error_code ignored;
        std::filesystem::remove(leftover.journal, ignored);
    }
    Q_EMIT planReplaced();
    return recovered->edits;
}

// What is not saved stays in the journal and is offered at the next start: nothing is asked, nothing is lost.
void Work::close() {
    if (journal_ && !isChanged()) {
        std::move(*journal_).discard();
    }
    journal_.reset();
    planFile_.reset();
    history_.reset();
    draft_.reset();
    file_.clear();
    saved_ = plan::Plan{};
}

bool Work::isChanged() const {
    return history_ && !(committed() == saved_);
}

void Work::commit(plan::Plan next, const std::string& caption) {
    if (!history_) {
        return;
    }
    const plan::Plan before = plan();
    const plan::Plan committedBefore = committed();
    draft_.reset();
    history_->push(std::move(next), caption);
    renewFigures(before);
    keepChoices();
    (void)journalStep(committedBefore);
    Q_EMIT planChanged();
}

void Work::setDraft(std::optional<plan::Plan> draft) {
    const plan::Plan before = plan();
    draft_ = std::move(draft);
    renewFigures(before);
    Q_EMIT planChanged();
}

void Work::undo() {
    if (history_ && history_->canUndo()) {
        const plan::Plan before = committed();
        draft_.reset();
        history_->undo();
        renewFigures(before);
        keepChoices();
        (void)journalStep(before);
        Q_EMIT planChanged();
        Q_EMIT tableChanged();
    }
}

void Work::redo() {
    if (history_ && history_->canRedo()) {
        const plan::Plan before = committed();
        draft_.reset();
        history_->redo();
        renewFigures(before);
        keepChoices();
        (void)journalStep(before);
        Q_EMIT planChanged();
        Q_EMIT tableChanged();
    }
}

std::string Work::undoCaption() const {
    return history_ ? history_->undoCaption() : std::string{};
}

std::string Work::redoCaption() const {
    return history_ ? history_->redoCaption() : std::string{};
}

void Work::renewFigures(const plan::Plan& before) {
    const plan::Plan& now = plan();
    if (sameForRoutes(before, now)) {
        return;
    }
    figures_.clear();
    figureFaults_.clear();
    for (const plan::RoutePtr& route : now.routes()) {
        if (auto figures = figuresOf(now, *route)) {
            figures_.emplace(route->id, std::move(*figures));
        } else {
            figureFaults_.emplace(route->id, figures.error());
        }
    }
}

/// Selection, working film and phase name things that an edit or an undo may have taken away.
void Work::keepChoices() {
    const plan::Plan& now = committed();
    if (selected_ && !now.measure(*selected_) && !now.route(*selected_)) {
        selected_.reset();
        Q_EMIT selectionChanged();
    }
    const auto films = filmsOnTable();
    const bool onTable =
        std::any_of(films.begin(), films.end(), [&](const plan::FilmPtr& film) { return working_ == film->id; });
    if (!onTable) {
        working_ = films.empty() ? std::nullopt : std::optional(films.back()->id);
        Q_EMIT tableChanged();
    }
}

void Work::select(std::optional<plan::ItemId> item) {
    if (selected_ == item) {
        return;
    }
    selected_ = item;
    chooseLedgerRoute();
    Q_EMIT selectionChanged();
}

/// The route that is selected; for a route point the one shown already where it sits on that, too, else the first.
void Work::chooseLedgerRoute() {
    if (!selected_) {
        return;
    }
    if (committed().route(*selected_)) {
        ledgerRoute_ = selected_;
        return;
    }
    const plan::RoutePtr shown = ledgerRoute_ ? committed().route(*ledgerRoute_) : nullptr;
    if (shown && sitsOn(*shown, *selected_)) {
        return;
    }
    for (const plan::RoutePtr& route : committed().routes()) {
        if (sitsOn(*route, *selected_)) {
            ledgerRoute_ = route->id;
            return;
        }
    }
}

void Work::setWorkingFilm(const plan::FilmId& film) {
    if (working_ != film && plan().film(film)) {
        working_ = film;
        looks_[film].shown = true;
        Q_EMIT tableChanged();
    }
}

void Work::setPhase(int number) {
    if (phase_ != number) {
        phase_ = number;
        keepChoices();
        Q_EMIT tableChanged();
    }
}

FilmLook Work::look(const plan::FilmId& film) const {
    const auto found = looks_.find(film);
    return found == looks_.end() ? FilmLook{} : found->second;
}

void Work::setLook(const plan::FilmId& film, FilmLook look) {
    looks_[film] = look;
    Q_EMIT tableChanged();
}

std::vector<plan::FilmPtr> Work::filmsOnTable() const {
    std::vector<plan::FilmPtr> films;
    for (const plan::FilmPtr& film : plan().films()) {
        if (phase_ == 0 || film->phases.empty() || film->phases.contains(phase_)) {
            films.push_back(film);
        }
    }
    return films;
}

void Work::setAngles(geodesy::AngleUnit unit) {
    if (angles_ != unit) {
        angles_ = unit;
        Q_EMIT planChanged();
    }
}

void Work::setWetRoute(std::optional<plan::Plan> with, plan::ItemId route) {
    if (with || wetPlan_) {
        wetPlan_ = std::move(with);
        wetRoute_ = route;
        Q_EMIT wetChanged();
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

plan::RoutePtr Work::ledgerRoute() const {
    if (wetPlan_) {
        return wetPlan_->route(wetRoute_);
    }
    return ledgerRoute_ ? plan().route(*ledgerRoute_) : nullptr;
}

void Work::beginJournal() {
    auto journal =
        files::Journal::begin(order_.state, {file_.string(), committed().id(), planFile_ ? planFile_->saves() : 0});
    if (journal) {
        journal_.emplace(std::move(*journal));
    } else {
        Q_EMIT journalFailed(QString::fromStdString(std::string(journal.error().fault.name)));
    }
}

bool Work::journalStep(const plan::Plan& before) {
    if (!journal_) {
        return false;
    }
    const auto added = journal_->add(before, committed());
    if (!added) {
        Q_EMIT journalFailed(QString::fromStdString(std::string(added.error().fault.name)));
    }
    return added.has_value();
}

}  // namespace crosstick::work
