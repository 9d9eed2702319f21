#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace crosstick::testing {

struct SourceFile {
    std::filesystem::path path;  ///< relative to the project's root: "core/units/result.h"
    std::vector<std::string> lines;
};

/// Every file that Git would keep under these folders of the project, by name: build folders and hidden ones are left
/// out. Text files only, chosen by their endings.
[[nodiscard]] std::vector<SourceFile> sourceFiles(const std::vector<std::string>& folders,
                                                  const std::vector<std::string>& endings);

/// The file named in an include line, with its opening mark: "\"core/units/result.h" or "<QImage"; empty for any other
/// line.
[[nodiscard]] std::string included(const std::string& line);

}  // namespace crosstick::testing
