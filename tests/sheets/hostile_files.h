#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

namespace crosstick::testing {

/// A file that is made to harm whoever reads it.
struct HostileFile {
    std::string name;  ///< what it does, for a message
    std::filesystem::path path;
};

/// Heads that promise sizes nobody has pixels for, in every form that we read.
[[nodiscard]] std::vector<HostileFile> absurdSizes(const std::filesystem::path& folder);
/// A few kilobytes that unpack to gigabytes.
[[nodiscard]] std::vector<HostileFile> bombs(const std::filesystem::path& folder);
/// Tables that name themselves, or each other.
[[nodiscard]] std::vector<HostileFile> loops(const std::filesystem::path& folder);
/// One kind of bytes under another kind's name.
[[nodiscard]] std::vector<HostileFile> wrongNames(const std::filesystem::path& folder);
/// A picture in every form, cut at every tenth of its length.
[[nodiscard]] std::vector<HostileFile> cutAtEveryTenth(const std::filesystem::path& folder);

/// A PNG whose head says so much, and whose pixels are so many bytes of zero.
[[nodiscard]] std::string pngOf(std::uint32_t columns, std::uint32_t rows, std::size_t zeros = 0);
[[nodiscard]] std::string pngChunk(const std::string& kind, const std::string& body);
/// Big and little ends first.
[[nodiscard]] std::string bigEndian(std::uint64_t number, int bytes);
[[nodiscard]] std::string littleEndian(std::uint64_t number, int bytes);

}  // namespace crosstick::testing
