#pragma once

#include <filesystem>

#include "core/sheets/dataset.h"

namespace crosstick::reading {

/// A file of ours that is being written.
struct OwnFile {
    std::filesystem::path path;
    sheets::DatasetPtr dataset;

    /// Why the last call failed: the disk is full, or the folder may not be written. Errors: sheets/no-room.
    [[nodiscard]] Error noRoom(const sheets::QuietGdal& quiet) const;
    /// Writes what is still held and closes it. Errors: sheets/no-room.
    [[nodiscard]] Result<void> finish();
};

}  // namespace crosstick::reading
