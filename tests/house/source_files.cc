#include "tests/house/source_files.h"

#include <algorithm>
#include <fstream>

#include "tests/places.h"

namespace crosstick::testing {
namespace {

SourceFile readFile(const std::filesystem::path& root, const std::filesystem::path& file) {
    SourceFile source{file.lexically_relative(root), {}};
    std::ifstream in(file);
    for (std::string line; std::getline(in, line);) {
        source.lines.push_back(line);
    }
    return source;
}

}  // namespace

std::vector<SourceFile> sourceFiles(const std::vector<std::string>& folders, const std::vector<std::string>& endings) {
    const std::filesystem::path root(places::source());
    std::vector<SourceFile> files;
    for (const std::string& folder : folders) {
        for (const auto& entry : std::filesystem::recursive_directory_iterator(root / folder)) {
            const std::string ending = entry.path().extension().string();
            if (entry.is_regular_file() && std::find(endings.begin(), endings.end(), ending) != endings.end()) {
                files.push_back(readFile(root, entry.path()));
            }
        }
    }
    std::sort(files.begin(), files.end(),
              [](const SourceFile& a, const SourceFile& b) { return a.path.native() < b.path.native(); });
    return files;
}

std::string included(const std::string& line) {
    const std::string start = "#include ";
    if (!line.starts_with(start) || line.size() < start.size() + 2) {
        return {};
    }
    const auto end = line.find_first_of("\">", start.size() + 1);
    return line.substr(start.size(), end == std::string::npos ? end : end - start.size());
}

}  // namespace crosstick::testing
