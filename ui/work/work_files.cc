// How a plan comes and how it is kept: files and the journal.
#include <algorithm>

#include "core/files/faults.h"
#include "core/plan/edits.h"
#include "ui/work/work.h"

namespace crosstick::work {
namespace {

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

QString nameOf(const std::filesystem::path& file) {
    return QString::fromStdString(file.filename().string());
}

/// The sheets stay where they are: their paths are told from the plan's new place.
plan::Plan seenFrom(const plan::Plan& plan, const std::filesystem::path& folder, const std::filesystem::path& place) {
    plan::Plan seen = plan;
    for (const plan::SheetPtr& held : plan.sheets()) {
        plan::Sheet sheet = *held;
        const auto from = [&](const std::string& path) {
            const std::filesystem::path given(path);
            const auto whole = given.is_absolute() ? given : folder / given;
            const auto relative = whole.lexically_proximate(place);
            return path.empty() ? path : relative.begin()->string() == ".." ? whole.string() : relative.string();
        };
        sheet.path = from(sheet.path);
        sheet.elevationPath = from(sheet.elevationPath);
        if (!(sheet == *held)) {
            plan::PlanBuilder builder(seen);
            builder.put(std::move(sheet));
            seen = std::move(builder).build();
        }
    }
    return seen;
}

}  // namespace

struct Work::Brought {
    std::shared_ptr<files::PlanFile> file;  ///< null for a plan that has none
    std::filesystem::path path, folder;
    plan::Plan saved;                     ///< what the file holds
    plan::Plan start;                     ///< what undo comes back to
    std::optional<plan::Plan> recovered;  ///< newer than it
    std::size_t edits = 0;
    Result<movement::WorkGrid> grid;
};

Result<Work::Brought> Work::bring(const std::filesystem::path& file) {
    auto opened = files::PlanFile::open(file, files::Access::ReadWrite);
    if (!opened) {
        opened = files::PlanFile::open(file, files::Access::ReadOnly);  // a stick that is write-protected can be read
    }
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    auto held = std::make_shared<files::PlanFile>(std::move(*opened));
    const std::filesystem::path path = std::filesystem::absolute(file);
    const plan::Plan plan = held->plan();
    return Brought{std::move(held), path, path.parent_path(), plan, plan, {}, 0, movement::WorkGrid::of(plan)};
}

Result<Work::Brought> Work::bringBack(const files::Leftover& leftover) {
    plan::Plan base;
    std::shared_ptr<files::PlanFile> file;
    if (!leftover.base.file.empty()) {
        auto opened = files::PlanFile::open(leftover.base.file, files::Access::ReadWrite);
        if (!opened) {
            return tl::unexpected(opened.error());
        }
        base = opened->plan();
        file = std::make_shared<files::PlanFile>(std::move(*opened));
    }
    auto recovered = files::replay(leftover.journal, base, file ? file->saves() : 0);
    if (!recovered) {
        return tl::unexpected(recovered.error());
    }
    const std::filesystem::path path = leftover.base.file;
    auto grid = movement::WorkGrid::of(recovered->plan);
    return Brought{std::move(file),  path,           path.parent_path(), base, base, recovered->plan,
                   recovered->edits, std::move(grid)};
}

void Work::lay(Brought brought) {
    close();
    planFile_ = std::move(brought.file);
    fileSaves_ = planFile_ ? planFile_->saves() : 0;
    file_ = brought.path;
    folder_ = brought.folder;
    saved_ = std::move(brought.saved);
    history_.emplace(std::move(brought.start));
    outlooks_.clear();
    if (brought.recovered) {
        history_->push(std::move(*brought.recovered), "what was found");
    }
    selection_.clear();
    working_.reset();
    ledgerRoute_.reset();
    looks_.clear();
    company_ = Company::All;
    top_ = Top::Lies;
    phase_ = committed().phases().empty() ? 0 : committed().phases().front().number;
    openGrid(std::move(brought.grid));
    readHeights();
    laySheets();
    figures_.clear();
    figureFaults_.clear();
    staleTraces_.clear();
    renewFigures(plan::Plan{});
    keepChoices();
    Q_EMIT planReplaced();
    Q_EMIT selectionChanged();
    Q_EMIT groundChanged();
}

void Work::open(const std::filesystem::path& file, Then then) {
    errands_.run(
        Lane::Files, tr("Opening %1").arg(nameOf(file)), GivingUp::Allowed, [file](Course&) { return bring(file); },
        [this, number = ++asked_, then = std::move(then)](Result<Brought> brought) {
            if (!brought) {
                return then(tl::unexpected(brought.error()));
            }
            const auto held = std::make_shared<Brought>(std::move(*brought));
            whenSaved([this, number, then, held] {
                if (number == asked_) {
                    lay(std::move(*held));
                    then({});  // its journal begins with the first step: till then the file has all of it
                }
            });
        });
}

void Work::begin(plan::Plan plan, const std::filesystem::path& folder) {
    auto grid = movement::WorkGrid::of(plan);
    const auto held =
        std::make_shared<Brought>(Brought{nullptr, {}, folder, plan::Plan{}, std::move(plan), {}, 0, std::move(grid)});
    whenSaved([this, number = ++asked_, held] {
        if (number == asked_) {
            lay(std::move(*held));
            (void)beginJournal();
        }
    });
}

void Work::takeUp(const files::Leftover& leftover, std::function<void(Result<std::size_t>)> then) {
    errands_.run(
        Lane::Files, tr("Taking up unsaved steps"), GivingUp::Allowed,
        [leftover](Course&) { return bringBack(leftover); },
        [this, number = ++asked_, leftover, then = std::move(then)](Result<Brought> brought) {
            if (!brought) {
                return then(tl::unexpected(brought.error()));
            }
            const auto held = std::make_shared<Brought>(std::move(*brought));
            whenSaved([this, number, leftover, then, held] {
                if (number != asked_) {
                    return;
                }
                const std::size_t edits = held->edits;
                lay(std::move(*held));
                if (beginJournal()) {  // the old journal goes only when the new one holds its steps
                    std::error_code ignored;
                    std::filesystem::remove(leftover.journal, ignored);
                }
                then(edits);
            });
        });
}

void Work::save(Instant now, Then then) {
    if (!planFile_ && saves_.empty()) {
        return then(fail(files::kFileMissing, {{"file", std::string{}}}));
    }
    const bool sameState = !saves_.empty() && saves_.back().as.empty() && saves_.back().plan == committed();
    if (sameState || (saves_.size() > 1 && saves_.back().as.empty())) {  // one that has not begun takes the newer state
        saves_.back().plan = committed();
        saves_.back().thens.push_back(std::move(then));
    } else {
        saves_.push_back({committed(), {}, now, {std::move(then)}});
    }
    const bool elsewhere =
        std::any_of(saves_.begin(), saves_.end(), [](const SaveWish& wish) { return !wish.as.empty(); });
    if (journal_ && !sameState && !elsewhere) {
        if (const auto marked = journal_->mark(fileSaves_ + static_cast<std::int64_t>(saves_.size())); !marked) {
            Q_EMIT journalFailed(marked.error());
        }
    }
    if (saves_.size() == 1 && !sameState) {
        startSave();
    }
}

void Work::saveAs(const std::filesystem::path& file, Instant now, Then then) {
    saves_.push_back({committed(), std::filesystem::absolute(file), now, {std::move(then)}});
    if (saves_.size() == 1) {
        startSave();
    }
}

void Work::startSave() {
    const SaveWish& wish = saves_.front();
    const auto& target = wish.as.empty() ? file_ : wish.as;
    const plan::Plan plan = wish.as.empty() ? wish.plan : seenFrom(wish.plan, folder_, wish.as.parent_path());
    errands_.run(
        Lane::Files, tr("Saving %1").arg(nameOf(target)), GivingUp::Refused,
        [file = planFile_, as = wish.as, now = wish.now, plan](Course&) -> Saved {
            if (file) {
                return {as.empty() ? file->save(plan, now) : file->saveAs(as, plan, now), file};
            }
            auto made = createdOver(as, plan, now);
            return made ? Saved{{}, std::make_shared<files::PlanFile>(std::move(*made))}
                        : Saved{tl::unexpected(made.error()), nullptr};
        },
        [this](const Saved& saved) { takeSaved(saved); });
}

void Work::takeSaved(const Saved& saved) {
    if (!saves_.front().as.empty() && saved.done && draft_) {
        savedWhileDragging_ = saved;
        return;
    }
    if (!saved.done) {  // what waited for it wanted the same file
        for (const SaveWish& wish : std::exchange(saves_, {})) {
            for (const Then& then : wish.thens) {
                then(saved.done);
            }
        }
        return endSaves();
    }
    const SaveWish wish = std::move(saves_.front());
    saves_.pop_front();
    planFile_ = saved.file;
    fileSaves_ = planFile_->saves();
    saved_ = wish.plan;
    if (!wish.as.empty()) {
        moveTo(wish.as);
    } else if (journal_ && saves_.empty() && !isChanged()) {
        (void)journal_->restart({file_.string(), committed().id(), fileSaves_});
    }
    if (!saves_.empty()) {
        startSave();
    }
    for (const Then& then : wish.thens) {
        then({});
    }
    Q_EMIT tableChanged();
    endSaves();
}

/// The plan goes on in another file: so do its journal, its paths, and the saves that wait.
void Work::moveTo(const std::filesystem::path& file) {
    const std::filesystem::path folder = std::exchange(folder_, file.parent_path());
    file_ = file;
    saved_ = seenFrom(saved_, folder, folder_);
    for (SaveWish& wish : saves_) {
        wish.plan = seenFrom(wish.plan, folder, folder_);
    }
    // The steps before, too: an undo must not bring back paths as they were seen from the old folder.
    history_->rewrite([&](const plan::Plan& plan) { return seenFrom(plan, folder, folder_); });
    (void)beginJournal();
}

void Work::endSaves() {
    if (saves_.empty()) {
        for (const auto& then : std::exchange(afterSaves_, {})) {
            then();
        }
    }
}

void Work::whenSaved(std::function<void()> then) {
    if (isSaving()) {
        afterSaves_.push_back(std::move(then));
    } else {
        then();
    }
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
    ++heightsRound_;  // heights that still come are of no use
    readsHeights_ = false;
    heights_.reset();
    gridFault_.reset();
    heightsFault_.reset();
    sheetGrounds_.lay({}, {}, {});
}

bool Work::beginJournal() {
    auto journal = files::Journal::begin(order_.state, {file_.string(), committed().id(), fileSaves_});
    Result<void> done = journal ? Result<void>{} : tl::unexpected(journal.error());
    plan::Plan held = saved_;
    const auto hold = [&](const plan::Plan& next) {
        if (done && !(next == held)) {
            done = journal->add(std::exchange(held, next), next);
        }
    };
    std::int64_t saves = fileSaves_;
    for (const SaveWish& wish : saves_) {
        hold(wish.plan);
        if (done) {
            done = journal->mark(++saves);
        }
    }
    hold(committed());
    if (!done) {
        Q_EMIT journalFailed(done.error());
        return false;
    }
    if (journal_) {
        std::move(*journal_).discard();
    }
    journal_.emplace(std::move(*journal));
    return true;
}

}  // namespace crosstick::work
