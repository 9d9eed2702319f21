#pragma once

#include <filesystem>
#include <memory>

#include "core/files/database.h"
#include "core/plan/plan.h"

namespace crosstick::files {

/// A plan's GeoPackage. It changes only on save: one transaction with the difference between the plan last written and
/// the present one, in SQLite's rollback journal, so that after a crash the file holds the old or the new plan, never
/// else. One thread at a time.
class PlanFile {
  public:
    /// Writes a new file beside its place and moves it there; never over an existing one.
    /// Errors: files/file-exists, files/folder-missing, SQLite's.
    [[nodiscard]] static Result<PlanFile> create(const std::filesystem::path& file, const plan::Plan& plan,
                                                 Instant now);
    /// An older schema is read through a copy in memory; the file itself climbs the ladder with the first save.
    /// Errors: files/file-missing, files/not-a-plan, files/no-plan-inside, files/newer-plan, files/damaged-plan ...
    [[nodiscard]] static Result<PlanFile> open(const std::filesystem::path& file, Access access);

    [[nodiscard]] const plan::Plan& plan() const { return written_; }
    [[nodiscard]] const std::filesystem::path& file() const { return file_; }
    /// How often the file has been saved: the stamp a journal belongs to.
    [[nodiscard]] std::int64_t saves() const { return saves_; }

    /// Errors: files/changed-meanwhile where somebody else saved since, files/replaced-meanwhile where another file
    /// stands in its place, files/read-only, files/locked-now, files/disk-full: the file is as it was and the plan is
    /// not lost.
    [[nodiscard]] Result<void> save(const plan::Plan& plan, Instant now);
    /// A copy by SQLite's backup interface (issued states go along), brought to the plan, then moved into place.
    [[nodiscard]] Result<void> saveAs(const std::filesystem::path& file, const plan::Plan& plan, Instant now);

  private:
    std::filesystem::path file_;
    std::unique_ptr<Database> database_;
    plan::Plan written_;
    std::int64_t saves_ = 0;
    int schema_ = 0;
    std::uint64_t inode_ = 0;

    PlanFile() = default;
    [[nodiscard]] Result<void> write(const plan::Plan& plan, Instant now);
};

}  // namespace crosstick::files
