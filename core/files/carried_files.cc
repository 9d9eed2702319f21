#include "core/files/carried_files.h"

#include <fstream>
#include <optional>

#include <unistd.h>

#include "core/files/database.h"
#include "core/files/faults.h"
#include "core/units/sha256.h"

namespace crosstick::files {
namespace {

constexpr std::size_t kPiece = std::size_t{1} << 20U;

// Registered as an extension that only writers need to know; a program that does not know it reads the plan as before.
constexpr const char* kTables = R"(
CREATE TABLE IF NOT EXISTS crosstick_carried (
  path TEXT PRIMARY KEY, bytes INTEGER NOT NULL, sha256 TEXT NOT NULL) WITHOUT ROWID;
CREATE TABLE IF NOT EXISTS crosstick_carried_part (
  path TEXT NOT NULL, part INTEGER NOT NULL, bytes BLOB NOT NULL, PRIMARY KEY (path, part));
INSERT OR IGNORE INTO gpkg_extensions VALUES
  ('crosstick_carried', NULL, 'crosstick_plan', 'files that the plan carries, for handing on', 'write-only'),
  ('crosstick_carried_part', NULL, 'crosstick_plan', 'their bytes in pieces', 'write-only');
)";

bool hasTables(Database& database) {
    return database.wholeOf("SELECT count(*) FROM sqlite_master WHERE type='table' AND name='crosstick_carried'") > 0;
}

std::span<const std::uint8_t> bytesOf(const std::vector<char>& piece, std::streamsize count) {
    return {reinterpret_cast<const std::uint8_t*>(piece.data()), static_cast<std::size_t>(count)};
}

/// Undoes everything unless it is kept.
class Transaction {
  public:
    explicit Transaction(Database& database) : database_(database) { database_.run("BEGIN IMMEDIATE"); }
    ~Transaction() {
        if (!done_) {
            (void)database_.check();
            database_.run("ROLLBACK");
            (void)database_.check();
        }
    }
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;
    [[nodiscard]] Result<void> keep() {
        database_.run("COMMIT");
        auto kept = database_.check();
        done_ = kept.has_value();
        return kept;
    }

  private:
    Database& database_;
    bool done_ = false;
};

std::optional<CarriedFile> factsOf(Database& database, const std::string& path) {
    Statement read = database.prepare("SELECT path, bytes, sha256 FROM crosstick_carried WHERE path=?1");
    read.bind(1, std::string_view(path));
    if (!read.step()) {
        return std::nullopt;
    }
    return CarriedFile{std::string(read.text(0)), read.whole(1), std::string(read.text(2))};
}

/// The pieces of a file into the database. Gives size and checksum of what was read.
Result<CarriedFile> putPieces(Database& database, const std::string& path, std::istream& in, std::int64_t size,
                              const Onward& onward) {
    Statement write = database.prepare("INSERT INTO crosstick_carried_part VALUES (?1, ?2, ?3)");
    CarriedFile carried{path, 0, {}};
    Sha256Stream sum;
    std::vector<char> piece(kPiece);
    for (std::int64_t part = 0;; ++part) {
        in.read(piece.data(), static_cast<std::streamsize>(kPiece));
        if (in.gcount() == 0) {
            break;
        }
        const auto bytes = bytesOf(piece, in.gcount());
        sum.add(bytes);
        carried.bytes += in.gcount();
        write.bind(1, std::string_view(path)).bind(2, part).bind(3, bytes).run();
        if (!database.isGood()) {
            return tl::unexpected(database.check().error());
        }
        if (onward && !onward(carried.bytes, size)) {
            return fail(kGivenUp);
        }
    }
    carried.sha256 = hexText(std::move(sum).finish());
    return carried;
}

Result<void> writePieces(Database& database, const CarriedFile& wanted, const std::filesystem::path& out,
                         const Onward& onward) {
    std::ofstream file(out, std::ios::binary);
    Statement read = database.prepare("SELECT bytes FROM crosstick_carried_part WHERE path=?1 ORDER BY part");
    read.bind(1, std::string_view(wanted.path));
    Sha256Stream sum;
    std::int64_t written = 0;
    while (read.step()) {
        const auto bytes = read.blob(0);
        sum.add(bytes);
        file.write(reinterpret_cast<const char*>(bytes.data()), static_cast<std::streamsize>(bytes.size()));
        written += static_cast<std::int64_t>(bytes.size());
        if (onward && !onward(written, wanted.bytes)) {
            return fail(kGivenUp);
        }
    }
    if (auto sound = database.check(); !sound) {
        return sound;
    }
    file.flush();
    if (!file) {
        return fail(kCannotWrite, {{"file", out.string()}});
    }
    if (written != wanted.bytes || hexText(std::move(sum).finish()) != wanted.sha256) {
        return fail(kDamagedPlan, {{"file", database.file().string()},
                                   {"why", "the sheet " + wanted.path + " inside it is not what was put in"}});
    }
    return {};
}

bool isChecksum(const std::string& text) {
    return text.size() == 64 && text.find_first_not_of("0123456789abcdef") == std::string::npos;
}

/// By its path, else by its name where that is clear: a plan saved elsewhere names the same sheet by another path.
std::optional<CarriedFile> carriedAs(const std::vector<CarriedFile>& all, const std::string& path) {
    std::vector<CarriedFile> named;
    for (const CarriedFile& file : all) {
        if (file.path == path) {
            return file;
        }
        if (std::filesystem::path(file.path).filename() == std::filesystem::path(path).filename()) {
            named.push_back(file);
        }
    }
    return named.size() == 1 ? std::optional(named.front()) : std::nullopt;
}

}  // namespace

Result<CarriedFile> carry(const std::filesystem::path& plan, const std::string& path, const std::filesystem::path& file,
                          const Onward& onward) {
    std::ifstream in(file, std::ios::binary);
    std::error_code fault;
    const auto size = std::filesystem::file_size(file, fault);
    if (!in || fault) {
        return fail(kFileMissing, {{"file", file.string()}});
    }
    auto database = Database::open(plan, Access::ReadWrite);
    if (!database) {
        return tl::unexpected(database.error());
    }
    Transaction transaction(*database);
    database->run(kTables);
    for (const char* sql :
         {"DELETE FROM crosstick_carried_part WHERE path=?1", "DELETE FROM crosstick_carried WHERE path=?1"}) {
        database->prepare(sql).bind(1, std::string_view(path)).run();
    }
    auto carried = putPieces(*database, path, in, static_cast<std::int64_t>(size), onward);
    if (!carried) {
        return carried;
    }
    database->prepare("INSERT INTO crosstick_carried VALUES (?1, ?2, ?3)")
        .bind(1, std::string_view(path))
        .bind(2, carried->bytes)
        .bind(3, std::string_view(carried->sha256))
        .run();
    if (auto kept = transaction.keep(); !kept) {
        return tl::unexpected(kept.error());
    }
    return carried;
}

Result<std::vector<CarriedFile>> carryGround(const std::filesystem::path& file, const plan::Plan& plan,
                                             const Onward& onward) {
    std::vector<CarriedFile> all;
    for (const plan::SheetPtr& sheet : plan.sheets()) {
        for (const std::string& path : {sheet->path, sheet->elevationPath}) {
            if (path.empty()) {
                continue;
            }
            const std::filesystem::path named(path);
            auto one = carry(file, path, named.is_absolute() ? named : file.parent_path() / named, onward);
            if (!one) {
                return tl::unexpected(one.error());
            }
            all.push_back(std::move(*one));
        }
    }
    return all;
}

Result<std::vector<CarriedFile>> carriedIn(const std::filesystem::path& plan) {
    auto database = Database::open(plan, Access::ReadOnly);
    if (!database) {
        return tl::unexpected(database.error());
    }
    std::vector<CarriedFile> all;
    if (hasTables(*database)) {
        Statement read = database->prepare("SELECT path, bytes, sha256 FROM crosstick_carried ORDER BY path");
        while (read.step()) {
            all.push_back({std::string(read.text(0)), read.whole(1), std::string(read.text(2))});
        }
    }
    if (auto sound = database->check(); !sound) {
        return tl::unexpected(sound.error());
    }
    return all;
}

Result<void> takeOut(const std::filesystem::path& plan, const std::string& path, const std::filesystem::path& out,
                     const Onward& onward) {
    auto database = Database::open(plan, Access::ReadOnly);
    if (!database) {
        return tl::unexpected(database.error());
    }
    const auto wanted = hasTables(*database) ? factsOf(*database, path) : std::nullopt;
    if (!wanted) {
        return fail(kNotCarried, {{"file", plan.string()}, {"path", path}});
    }
    const std::filesystem::path part = out.string() + "." + std::to_string(::getpid()) + ".part";
    auto written = writePieces(*database, *wanted, part, onward);
    std::error_code fault;
    if (written) {
        std::filesystem::rename(part, out, fault);
        if (fault) {
            written = fail(kCannotWrite, {{"file", out.string()}});
        }
    }
    if (!written) {
        std::filesystem::remove(part, fault);
    }
    return written;
}

std::filesystem::path readableFile(const std::filesystem::path& plan, const std::filesystem::path& folder,
                                   const std::string& path, const std::filesystem::path& into, const Onward& onward) {
    const std::filesystem::path named(path);
    const auto own = named.is_absolute() ? named : folder / named;
    std::error_code fault;
    if (plan.empty() || std::filesystem::exists(own, fault)) {
        return own;
    }
    const auto carried = carriedAs(carriedIn(plan).value_or(std::vector<CarriedFile>{}), path);
    if (!carried || !isChecksum(carried->sha256)) {  // it becomes a folder's name, and a plan may come from anybody
        return own;
    }
    // By its checksum: two plans may carry different sheets of one name.
    const auto out = into / carried->sha256.substr(0, 16) / named.filename();
    std::filesystem::create_directories(out.parent_path(), fault);
    const bool there = std::filesystem::exists(out, fault) || takeOut(plan, carried->path, out, onward).has_value();
    return there ? out : own;
}

Result<void> carryNothing(const std::filesystem::path& plan) {
    auto database = Database::open(plan, Access::ReadWrite);
    if (!database) {
        return tl::unexpected(database.error());
    }
    if (!hasTables(*database)) {
        return database->check();
    }
    {
        Transaction transaction(*database);
        database->run(
            "DROP TABLE crosstick_carried_part; DROP TABLE crosstick_carried;"
            "DELETE FROM gpkg_extensions WHERE table_name IN ('crosstick_carried', 'crosstick_carried_part')");
        if (auto kept = transaction.keep(); !kept) {
            return kept;
        }
    }
    database->shrink();
    return database->check();
}

}  // namespace crosstick::files
