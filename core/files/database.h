#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/units/result.h"
#include "core/units/uuid.h"

struct sqlite3;
struct sqlite3_stmt;

namespace crosstick::files {

class Database;

/// A prepared statement. Bind, step, read columns; reset for the next round. Texts and blobs are bound without a copy:
/// they must live until the step.
class Statement {
  public:
    Statement(Database& database, const char* sql);

    Statement& bind(int place, std::int64_t value);
    Statement& bind(int place, std::string_view text);
    Statement& bind(int place, std::span<const std::uint8_t> bytes);  ///< an empty one binds NULL
    Statement& bind(int place, const Uuid& id);
    Statement& bindNull(int place);

    /// True while there is a row. A fault is kept by the database: see Database::check().
    bool step();
    /// Runs a statement that gives no rows, and makes it ready again.
    void run();
    void reset();

    [[nodiscard]] std::int64_t whole(int column) const;
    [[nodiscard]] std::string_view text(int column) const;  ///< valid until the next step
    [[nodiscard]] std::span<const std::uint8_t> blob(int column) const;
    [[nodiscard]] std::optional<Uuid> id(int column) const;  ///< nothing unless it is a blob of 16 bytes
    [[nodiscard]] bool isNull(int column) const;

  private:
    struct Finalise {
        void operator()(sqlite3_stmt* statement) const;
    };
    Database* database_;
    std::unique_ptr<sqlite3_stmt, Finalise> statement_;
};

enum class Access { ReadWrite, ReadOnly };

/// One SQLite file, opened so that nothing in it can run: triggers and views off, schema not trusted, sizes and work
/// bounded. The first fault stays until it is taken by check().
class Database {
  public:
    /// Errors: files/cannot-open and what faultOf() names.
    [[nodiscard]] static Result<Database> open(const std::filesystem::path& file, Access access);
    [[nodiscard]] static Result<Database> create(const std::filesystem::path& file);
    [[nodiscard]] static Result<Database> inMemory();

    void run(const char* sql);
    [[nodiscard]] Statement prepare(const char* sql) { return Statement(*this, sql); }
    [[nodiscard]] std::int64_t wholeOf(const char* sql);  ///< first column of the first row; 0 without one
    [[nodiscard]] std::int64_t lastRow() const;
    /// Copies everything from another database over this one (SQLite's backup interface, in one step).
    void copyFrom(Database& other);
    void shrink();      ///< gives back the room of what was deleted
    void allowViews();  ///< while our own schema is made

    [[nodiscard]] bool isGood() const { return fault_ == 0; }
    /// The first fault since the last check, as an error that names the file.
    [[nodiscard]] Result<void> check();
    [[nodiscard]] const std::filesystem::path& file() const { return file_; }

    Database(Database&&) noexcept = default;
    Database& operator=(Database&&) noexcept = default;
    Database(const Database&) = delete;
    Database& operator=(const Database&) = delete;
    ~Database() = default;

  private:
    friend class Statement;
    struct Close {
        void operator()(sqlite3* handle) const;
    };
    std::unique_ptr<sqlite3, Close> handle_;
    std::filesystem::path file_;
    int fault_ = 0;  ///< SQLite's extended code
    std::string why_;

    Database() = default;
    [[nodiscard]] static Result<Database> openWith(const std::filesystem::path& file, int flags);
    void note(int code);
};

}  // namespace crosstick::files
