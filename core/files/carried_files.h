#pragma once

#include <filesystem>
#include <functional>
#include <string>
#include <vector>

#include "core/plan/plan.h"
#include "core/units/result.h"

namespace crosstick::files {

/// A file that a plan carries inside it, for handing on.
struct CarriedFile {
    std::string path;  ///< as the plan names it: "sheet.tif"
    std::int64_t bytes = 0;
    std::string sha256;
    friend bool operator==(const CarriedFile&, const CarriedFile&) = default;
};

/// Told how far it is, in bytes; false gives up and leaves everything as it was.
using Onward = std::function<bool(std::int64_t done, std::int64_t of)>;

/// Puts a file's own bytes into a plan's GeoPackage, in pieces of 1 MB, in one transaction; in place of what was
/// carried under that path. Errors: files/file-missing of the file, files/given-up, and SQLite's: files/disk-full,
/// files/read-only, files/locked-now.
[[nodiscard]] Result<CarriedFile> carry(const std::filesystem::path& plan, const std::string& path,
                                        const std::filesystem::path& file, const Onward& onward = {});
/// The same for all files of a plan's ground: its sheets and their height models.
/// @param file  the plan's own, by whose folder its paths are read
[[nodiscard]] Result<std::vector<CarriedFile>> carryGround(const std::filesystem::path& file, const plan::Plan& plan,
                                                           const Onward& onward = {});
/// What it carries, by path; none for a plan that never carried any.
[[nodiscard]] Result<std::vector<CarriedFile>> carriedIn(const std::filesystem::path& plan);
/// Writes a carried file out again and checks it. @param out  appears whole or not at all
/// Errors: files/not-carried, files/damaged-plan where size or checksum differ, files/cannot-write, files/given-up.
[[nodiscard]] Result<void> takeOut(const std::filesystem::path& plan, const std::string& path,
                                   const std::filesystem::path& out, const Onward& onward = {});
/// Where a file of the plan's ground can be read: at its own place, else taken out of the plan into a folder, once.
/// @param path  as the plan names it  @param into  a folder of ours, made where it is missing
/// @return its own place too where it is neither there nor carried: whoever reads it then says what is missing
[[nodiscard]] std::filesystem::path readableFile(const std::filesystem::path& plan, const std::filesystem::path& folder,
                                                 const std::string& path, const std::filesystem::path& into,
                                                 const Onward& onward = {});
/// Carries nothing any more; the file shrinks. Errors: SQLite's.
[[nodiscard]] Result<void> carryNothing(const std::filesystem::path& plan);

}  // namespace crosstick::files
