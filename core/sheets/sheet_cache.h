#pragma once

#include <cstdint>
#include <filesystem>
#include <string>

#include "core/units/result.h"

namespace crosstick::sheets {

/// A folder of copies that can be made again: kept up to a size, its folders too, the longest unused dropped first.
/// Several programs may use it at once: a copy appears whole or not at all; one that is open survives being dropped.
class SheetCache {
  public:
    static constexpr std::int64_t kUsualSize = std::int64_t{8} << 30;

    explicit SheetCache(std::filesystem::path folder, std::int64_t mostBytes = kUsualSize)
        : folder_(std::move(folder)), mostBytes_(mostBytes) {}

    [[nodiscard]] const std::filesystem::path& folder() const { return folder_; }
    [[nodiscard]] std::int64_t mostBytes() const { return mostBytes_; }

    /// A name for what is made of a file: changes when the file does (size, time, first and last 64 KB; also the time
    /// of a .prj beside it). @param what  is made of it, and how
    /// Errors: sheets/file-missing.
    [[nodiscard]] static Result<std::string> nameFor(const std::filesystem::path& file, const std::string& what);

    /// The copy of that name, counted as used just now; empty where there is none.
    [[nodiscard]] std::filesystem::path find(const std::string& name) const;
    /// Where to make it, beside its later place. Errors: sheets/no-room where the folder cannot be made.
    [[nodiscard]] Result<std::filesystem::path> place(const std::string& name) const;
    /// Takes in what was made there, and drops what is over the size, the new one never. Errors: sheets/no-room.
    [[nodiscard]] Result<std::filesystem::path> take(const std::filesystem::path& made, const std::string& name) const;
    [[nodiscard]] std::int64_t bytes() const;  ///< of all copies

  private:
    std::filesystem::path folder_;
    std::int64_t mostBytes_;

    void drop(const std::filesystem::path& except) const;
};

}  // namespace crosstick::sheets
