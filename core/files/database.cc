#include "core/files/database.h"

#include <algorithm>

#include <sqlite3.h>

#include "core/files/faults.h"

namespace crosstick::files {
namespace {

constexpr int kLongestValue = 64 << 20;
constexpr int kPatienceMs = 2000;

Error faultOf(int code, const std::string& why, const std::filesystem::path& file) {
    const auto named = [&](FaultId fault) { return Error{fault, {{"file", file.string()}, {"why", why}}}; };
    switch (code & 0xff) {
        case SQLITE_NOTADB:
            return named(kNotAPlan);
        case SQLITE_FULL:
            return named(kDiskFull);
        case SQLITE_READONLY:
        case SQLITE_PERM:
            return named(kReadOnly);
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            return named(kLockedNow);
        case SQLITE_CANTOPEN:
            return named(kCannotOpen);
        case SQLITE_IOERR:
            return named(kIoError);
        case SQLITE_NOMEM:
        case SQLITE_TOOBIG:
            return named(kPlanTooLarge);
        default:
            return named(kDamagedPlan);
    }
}

}  // namespace

void Statement::Finalise::operator()(sqlite3_stmt* statement) const {
    sqlite3_finalize(statement);
}

Statement::Statement(Database& database, const char* sql) : database_(&database) {
    sqlite3_stmt* made = nullptr;
    database.note(sqlite3_prepare_v3(database.handle_.get(), sql, -1, SQLITE_PREPARE_PERSISTENT, &made, nullptr));
    statement_.reset(made);
}

Statement& Statement::bind(int place, std::int64_t value) {
    sqlite3_bind_int64(statement_.get(), place, value);
    return *this;
}
Statement& Statement::bind(int place, std::string_view text) {
    sqlite3_bind_text64(statement_.get(), place, text.data(), text.size(), SQLITE_STATIC, SQLITE_UTF8);
    return *this;
}
Statement& Statement::bind(int place, std::span<const std::uint8_t> bytes) {
    if (bytes.empty()) {
        return bindNull(place);
    }
    sqlite3_bind_blob64(statement_.get(), place, bytes.data(), bytes.size(), SQLITE_STATIC);
    return *this;
}
Statement& Statement::bind(int place, const Uuid& id) {
    sqlite3_bind_blob64(statement_.get(), place, id.bytes.data(), id.bytes.size(), SQLITE_TRANSIENT);
    return *this;
}
Statement& Statement::bindNull(int place) {
    sqlite3_bind_null(statement_.get(), place);
    return *this;
}

bool Statement::step() {
    if (!database_->isGood() || !statement_) {
        return false;
    }
    const int code = sqlite3_step(statement_.get());
    if (code == SQLITE_ROW) {
        return true;
    }
    if (code != SQLITE_DONE) {
        database_->note(code);
    }
    return false;
}
void Statement::run() {
    step();
    reset();
}
void Statement::reset() {
    sqlite3_reset(statement_.get());
}

std::int64_t Statement::whole(int column) const {
    return sqlite3_column_int64(statement_.get(), column);
}
std::string_view Statement::text(int column) const {
    const auto* bytes = reinterpret_cast<const char*>(sqlite3_column_text(statement_.get(), column));
    return bytes == nullptr
               ? std::string_view{}
               : std::string_view(bytes, static_cast<std::size_t>(sqlite3_column_bytes(statement_.get(), column)));
}
std::span<const std::uint8_t> Statement::blob(int column) const {
    const auto* bytes = static_cast<const std::uint8_t*>(sqlite3_column_blob(statement_.get(), column));
    return bytes == nullptr
               ? std::span<const std::uint8_t>{}
               : std::span(bytes, static_cast<std::size_t>(sqlite3_column_bytes(statement_.get(), column)));
}
std::optional<Uuid> Statement::id(int column) const {
    const auto bytes = blob(column);
    Uuid id;
    if (bytes.size() != id.bytes.size()) {
        return std::nullopt;
    }
    std::copy(bytes.begin(), bytes.end(), id.bytes.begin());
    return id;
}
bool Statement::isNull(int column) const {
    return sqlite3_column_type(statement_.get(), column) == SQLITE_NULL;
}

void Database::Close::operator()(sqlite3* handle) const {
    sqlite3_close_v2(handle);
}

Result<Database> Database::openWith(const std::filesystem::path& file, int flags) {
    Database database;
    database.file_ = file;
    sqlite3* handle = nullptr;
    const int code =
        sqlite3_open_v2(file.c_str(), &handle, flags | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE, nullptr);
    database.handle_.reset(handle);
    if (code != SQLITE_OK) {
        return tl::unexpected(faultOf(code, handle == nullptr ? "out of memory" : sqlite3_errmsg(handle), file));
    }
    sqlite3_busy_timeout(handle, kPatienceMs);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_ENABLE_VIEW, 0, nullptr);
    sqlite3_limit(handle, SQLITE_LIMIT_LENGTH, kLongestValue);
    sqlite3_limit(handle, SQLITE_LIMIT_ATTACHED, 0);
    return database;
}

Result<Database> Database::open(const std::filesystem::path& file, Access access) {
    return openWith(file, access == Access::ReadOnly ? SQLITE_OPEN_READONLY : SQLITE_OPEN_READWRITE);
}
Result<Database> Database::create(const std::filesystem::path& file) {
    return openWith(file, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
}
Result<Database> Database::inMemory() {
    return openWith(":memory:", SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
}

// The shrunk database is attached beside the old one while it is written.
void Database::shrink() {
    sqlite3_limit(handle_.get(), SQLITE_LIMIT_ATTACHED, 1);
    run("VACUUM");
    sqlite3_limit(handle_.get(), SQLITE_LIMIT_ATTACHED, 0);
}

void Database::allowViews() {
    sqlite3_db_config(handle_.get(), SQLITE_DBCONFIG_ENABLE_VIEW, 1, nullptr);
}

void Database::note(int code) {
    if (code != SQLITE_OK && code != SQLITE_DONE && code != SQLITE_ROW && fault_ == 0) {
        fault_ = code;
        why_ = sqlite3_errmsg(handle_.get());
    }
}

void Database::run(const char* sql) {
    if (isGood()) {
        note(sqlite3_exec(handle_.get(), sql, nullptr, nullptr, nullptr));
    }
}

std::int64_t Database::wholeOf(const char* sql) {
    Statement statement(*this, sql);
    return statement.step() ? statement.whole(0) : 0;
}

std::int64_t Database::lastRow() const {
    return sqlite3_last_insert_rowid(handle_.get());
}

void Database::copyFrom(Database& other) {
    sqlite3_backup* backup = sqlite3_backup_init(handle_.get(), "main", other.handle_.get(), "main");
    if (backup == nullptr) {
        note(sqlite3_extended_errcode(handle_.get()));
        return;
    }
    sqlite3_backup_step(backup, -1);
    note(sqlite3_backup_finish(backup));
}

Result<void> Database::check() {
    if (fault_ == 0) {
        return {};
    }
    const Error error = faultOf(fault_, why_, file_);
    fault_ = 0;
    why_.clear();
    return tl::unexpected(error);
}

}  // namespace crosstick::files
