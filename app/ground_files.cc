#include "app/ground_files.h"

#include "core/files/carried_files.h"

namespace crosstick::app {

sheets::FileFinder groundFinder(const std::filesystem::path& plan, const Surroundings& surroundings) {
    return [plan, into = surroundings.reader.cache().folder() / "carried"](const std::string& path) {
        return files::readableFile(plan, plan.parent_path(), path, into);
    };
}

}  // namespace crosstick::app
