#include "app/ground_files.h"

#include "app/progress_line.h"
#include "core/files/carried_files.h"

namespace crosstick::app {

sheets::FileFinder groundFinder(const std::filesystem::path& plan, const Surroundings& surroundings) {
    return [plan, into = surroundings.reader.cache().folder() / "carried"](const std::string& path) {
        return files::readableFile(plan, plan.parent_path(), path, into);
    };
}

Result<std::shared_ptr<const sheets::Elevation>> heightsFor(const plan::Plan& plan, const std::filesystem::path& file,
                                                            const Surroundings& surroundings) {
    ProgressLine line(surroundings.err, "reading the heights");
    return sheets::heightsOf(plan, groundFinder(file, surroundings), surroundings.reader, line.watch());
}

Result<sheets::Raster> sheetFor(const plan::Sheet& sheet, const std::filesystem::path& file,
                                const Surroundings& surroundings) {
    ProgressLine line(surroundings.err, "preparing the map sheet");
    return surroundings.reader.sheet(groundFinder(file, surroundings)(sheet.path), line.watch())
        .and_then([](const std::filesystem::path& copy) { return sheets::Raster::open(copy); });
}

}  // namespace crosstick::app
