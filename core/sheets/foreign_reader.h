#pragma once

#include <filesystem>
#include <functional>
#include <string>

#include "core/sheets/file_report.h"
#include "core/sheets/messages.h"
#include "core/sheets/pixels.h"
#include "core/sheets/sheet_cache.h"
#include "core/worker/child.h"

namespace crosstick::sheets {

/// How whoever waits for a file takes part. Called on the thread that waits; each may be empty.
struct Watch {
    worker::IsStopped isStopped;
    std::function<void(messages::Progress)> tell;
    std::function<void(const Pixels&)> show;  ///< the whole sheet at a glance, before its copy is made
};

/// Reads foreign files in a process of its own, with limits, and keeps copies of what it read that are safe to open
/// here. A crash, a hang or a bomb in there is one fault here.
/// Thread: any; each call has its own process.
class ForeignReader {
  public:
    /// One that finds no program: every file is a fault.
    ForeignReader() : ForeignReader({}, SheetCache({})) {}
    /// @param program  the reader's executable
    ForeignReader(std::filesystem::path program, SheetCache cache)
        : program_(std::move(program)), cache_(std::move(cache)) {}

    /// What a file says of itself. Within 5 seconds and 1 GB.
    /// Errors: sheets/file-missing, sheets/not-a-raster, sheets/too-large, sheets/block-too-large, sheets/reader (with
    /// `why` for what ended the process), worker/stopped, worker/no-program.
    [[nodiscard]] Result<FileReport> inspect(const std::filesystem::path& file, const Watch& watch = {}) const;
    /// Our copy of a sheet, for Raster::open(): from the cache, else made now. Within 2.5 GB, 60 seconds from one sign
    /// of progress to the next. Errors: as inspect(); sheets/colours, sheets/damaged, sheets/no-room.
    [[nodiscard]] Result<std::filesystem::path> sheet(const std::filesystem::path& file, const Watch& watch = {}) const;
    /// Is the copy there already?
    [[nodiscard]] bool hasSheet(const std::filesystem::path& file) const;
    /// Our copy of a height model, for Elevation::open(). @param unit  where the file does not say it
    /// Errors: as sheet(); sheets/no-crs, sheets/no-placement, sheets/not-heights, sheets/height-unit.
    [[nodiscard]] Result<std::filesystem::path> heights(const std::filesystem::path& file, HeightUnit unit,
                                                        const Watch& watch = {}) const;
    [[nodiscard]] const SheetCache& cache() const { return cache_; }

  private:
    std::filesystem::path program_;
    SheetCache cache_;

    [[nodiscard]] Result<std::filesystem::path> copy(messages::Order order, const std::string& what,
                                                     const Watch& watch) const;
    /// Gives an order and hears out the answer; Report and Picture go to `hear`.
    [[nodiscard]] Result<void> order(const messages::Order& order, const worker::Limits& limits, const Watch& watch,
                                     const std::function<Result<void>(const worker::Record&)>& hear) const;
};

}  // namespace crosstick::sheets
