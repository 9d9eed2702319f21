#include "core/files/plan_file.h"

#include <cerrno>
#include <cstdio>
#include <system_error>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include "core/files/faults.h"
#include "core/files/plan_store.h"
#include "core/files/schema.h"

namespace crosstick::files {
namespace {

std::uint64_t inodeOf(const std::filesystem::path& file) {
    struct stat facts {};
    return ::stat(file.c_str(), &facts) == 0 ? facts.st_ino : 0;
}

/// So that the new name survives a power cut, too.
void syncFolder(const std::filesystem::path& file) {
    const auto folder = file.has_parent_path() ? file.parent_path() : std::filesystem::path(".");
    const int handle = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (handle >= 0) {
        ::fsync(handle);
        ::close(handle);
    }
}

/// Where a file is made before it is moved into place: same folder, so that the move is one step.
std::filesystem::path draftOf(const std::filesystem::path& file) {
    auto draft = file;
    draft.replace_filename("." + file.filename().string() + "." + std::to_string(::getpid()) + ".new");
    return draft;
}

void removeDraft(const std::filesystem::path& draft) {
    std::error_code ignored;
    std::filesystem::remove(draft, ignored);
    std::filesystem::remove(draft.string() + "-journal", ignored);
}

Result<void> folderIsThere(const std::filesystem::path& file) {
    const auto folder = file.has_parent_path() ? file.parent_path() : std::filesystem::path(".");
    std::error_code ignored;
    if (!std::filesystem::is_directory(folder, ignored)) {
        return fail(kFolderMissing, {{"folder", folder.string()}});
    }
    return {};
}

/// A save that broke off leaves SQLite's journal beside the file. Whoever only reads may not play it back and would be
/// told that the file is read-only; so it is played back first, by whoever may write. A refusal shows on opening.
void finishBrokenSave(const std::filesystem::path& file) {
    std::error_code ignored;
    if (!std::filesystem::exists(file.string() + "-journal", ignored)) {
        return;
    }
    if (auto database = Database::open(file, Access::ReadWrite)) {
        (void)database->wholeOf("SELECT count(*) FROM sqlite_master");
    }
}

/// Puts a finished draft in its place without replacing what stands there: nobody's file is lost to a race.
Result<void> moveIntoFreePlace(const std::filesystem::path& draft, const std::filesystem::path& file) {
    if (::renameat2(AT_FDCWD, draft.c_str(), AT_FDCWD, file.c_str(), RENAME_NOREPLACE) == 0) {
        return {};
    }
    // Not every file system knows that call; those have links.
    if (errno == EINVAL && ::link(draft.c_str(), file.c_str()) == 0) {
        return {};
    }
    if (errno == EEXIST) {
        return fail(kFileExists, {{"file", file.string()}});
    }
    return fail(kCannotOpen, {{"file", file.string()}, {"why", std::generic_category().message(errno)}});
}

std::int64_t savesIn(Database& database) {
    return database.wholeOf("SELECT CAST(value AS INTEGER) FROM crosstick_plan WHERE key='saves'");
}

/// Everything a save does, in a transaction that is already open.
void writeInto(Database& database, const plan::Plan& before, const plan::Plan& after, std::int64_t saves, Instant now) {
    writeDifference(database, plan::difference(before, after), after, now);
    const std::string count = std::to_string(saves);
    database.prepare("UPDATE crosstick_plan SET value=?1 WHERE key='saves'").bind(1, count).run();
}

/// Whether SQLite's pages hang together: writing into pages that do not would lose more than reading them shows.
Result<void> pagesAreSound(Database& database) {
    Statement check = database.prepare("PRAGMA quick_check(1)");
    const bool sound = check.step() && check.text(0) == "ok";
    if (auto good = database.check(); !good) {
        return good;
    }
    if (!sound) {
        return fail(kDamagedPlan, {{"file", database.file().string()}, {"why", std::string("its pages are mixed up")}});
    }
    return {};
}

/// SQLite reads what is missing of the last page as zeros, and so would hide that a file was cut there.
Result<void> endsWithAPage(Database& database) {
    std::error_code trouble;
    const auto size = std::filesystem::file_size(database.file(), trouble);
    const auto page = static_cast<std::uintmax_t>(std::max<std::int64_t>(1, database.wholeOf("PRAGMA page_size")));
    if (!trouble && size % page != 0) {
        return fail(kDamagedPlan, {{"file", database.file().string()}, {"why", std::string("its end is missing")}});
    }
    return {};
}

Result<plan::Plan> readThroughCopy(Database& file, int schema) {
    auto copy = Database::inMemory();
    if (!copy) {
        return tl::unexpected(copy.error());
    }
    copy->copyFrom(file);
    if (auto good = copy->check(); !good) {
        return tl::unexpected(good.error());
    }
    if (auto climbed = migrate(*copy, schema); !climbed) {
        return tl::unexpected(climbed.error());
    }
    return readPlan(*copy);
}

}  // namespace

Result<PlanFile> PlanFile::open(const std::filesystem::path& file, Access access) {
    std::error_code ignored;
    if (!std::filesystem::is_regular_file(file, ignored)) {
        return fail(kFileMissing, {{"file", file.string()}});
    }
    if (access == Access::ReadOnly) {
        finishBrokenSave(file);
    }
    auto database = Database::open(file, access);
    if (!database) {
        return tl::unexpected(database.error());
    }
    const auto schema = schemaVersion(*database);
    if (!schema) {
        return tl::unexpected(schema.error());
    }
    if (auto whole = endsWithAPage(*database); !whole) {
        return tl::unexpected(whole.error());
    }
    PlanFile opened;
    opened.file_ = file;
    opened.schema_ = *schema;
    opened.inode_ = inodeOf(file);
    // Versions are visited in the order of identities, which is none in the file: while it is read, a large plan's
    // pages stay at hand (16 MiB at most) instead of being read again and again.
    database->run("PRAGMA cache_size=-16384");
    database->run("BEGIN");  // plan and save count from one moment
    opened.saves_ = savesIn(*database);
    auto plan = *schema == kSchemaVersion ? readPlan(*database) : readThroughCopy(*database, *schema);
    database->run("COMMIT");
    database->run("PRAGMA cache_size=-2000");
    if (!plan) {
        return tl::unexpected(plan.error());
    }
    if (auto good = database->check(); !good) {
        return tl::unexpected(good.error());
    }
    if (access == Access::ReadWrite) {
        if (auto sound = pagesAreSound(*database); !sound) {
            return tl::unexpected(sound.error());
        }
    }
    opened.written_ = std::move(*plan);
    opened.database_ = std::make_unique<Database>(std::move(*database));
    return opened;
}

Result<PlanFile> PlanFile::create(const std::filesystem::path& file, const plan::Plan& plan, Instant now) {
    if (auto there = folderIsThere(file); !there) {
        return tl::unexpected(there.error());
    }
    std::error_code ignored;
    if (std::filesystem::exists(file, ignored)) {
        return fail(kFileExists, {{"file", file.string()}});
    }
    const auto draft = draftOf(file);
    removeDraft(draft);
    {
        auto database = Database::create(draft);
        if (!database) {
            return tl::unexpected(database.error());
        }
        database->run("PRAGMA journal_mode=DELETE");
        database->run("BEGIN IMMEDIATE");
        makeSchema(*database, now);
        writeInto(*database, plan::Plan{}, plan, 1, now);
        database->run("COMMIT");
        if (auto good = database->check(); !good) {
            removeDraft(draft);
            return tl::unexpected(good.error());
        }
    }
    if (auto moved = moveIntoFreePlace(draft, file); !moved) {
        removeDraft(draft);
        return tl::unexpected(moved.error());
    }
    removeDraft(draft);
    syncFolder(file);
    return open(file, Access::ReadWrite);
}

Result<void> PlanFile::write(const plan::Plan& plan, Instant now) {
    Database& database = *database_;
    if (savesIn(database) != saves_ && database.isGood()) {
        return fail(kChangedMeanwhile, {{"file", file_.string()}});
    }
    plan::Plan before = written_;
    if (schema_ != kSchemaVersion) {
        if (auto climbed = migrate(database, schema_); !climbed) {
            return climbed;
        }
    }
    writeInto(database, before, plan, saves_ + 1, now);
    return database.check();
}

Result<void> PlanFile::save(const plan::Plan& plan, Instant now) {
    if (inodeOf(file_) != inode_) {
        return fail(kReplacedMeanwhile, {{"file", file_.string()}});
    }
    Database& database = *database_;
    database.allowViews();
    database.run("PRAGMA journal_mode=DELETE");  // a file that somebody put into WAL mode comes back to one file
    database.run("BEGIN IMMEDIATE");
    if (auto begun = database.check(); !begun) {
        return begun;
    }
    auto done = write(plan, now);
    if (done) {
        database.run("COMMIT");
        done = database.check();
    }
    if (!done) {
        database.run("ROLLBACK");
        (void)database.check();  // SQLite may have rolled back by itself
        return done;
    }
    written_ = plan;
    ++saves_;
    schema_ = kSchemaVersion;
    return {};
}

Result<void> PlanFile::saveAs(const std::filesystem::path& file, const plan::Plan& plan, Instant now) {
    if (auto there = folderIsThere(file); !there) {
        return there;
    }
    const auto draft = draftOf(file);
    removeDraft(draft);
    const auto make = [&]() -> Result<void> {
        auto copy = Database::create(draft);
        if (!copy) {
            return tl::unexpected(copy.error());
        }
        copy->copyFrom(*database_);
        if (auto good = copy->check(); !good) {
            return good;
        }
        auto opened = open(draft, Access::ReadWrite);
        return opened ? opened->save(plan, now) : tl::unexpected(opened.error());
    };
    if (auto made = make(); !made) {
        removeDraft(draft);
        return made;
    }
    std::error_code fault;
    std::filesystem::rename(draft, file, fault);
    if (fault) {
        removeDraft(draft);
        return fail(kCannotOpen, {{"file", file.string()}, {"why", fault.message()}});
    }
    syncFolder(file);
    auto opened = open(file, Access::ReadWrite);
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    *this = std::move(*opened);
    return {};
}

}  // namespace crosstick::files
