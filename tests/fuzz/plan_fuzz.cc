// Any bytes as a plan's file: opening them gives an error that names the file, or a plan that can be saved and reads
// back equal.

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include <unistd.h>

#include "core/files/plan_file.h"

namespace {

using namespace crosstick;

void require(bool claim) {
    if (!claim) {
        std::abort();
    }
}

/// One file for this process, in memory where the machine has such a place.
std::filesystem::path ownFile() {
    static const std::filesystem::path file =
        (std::filesystem::exists("/dev/shm") ? std::filesystem::path("/dev/shm")
                                             : std::filesystem::temp_directory_path()) /
        ("crosstick-plan-fuzz-" + std::to_string(::getpid()) + ".gpkg");
    return file;
}

void checkSaving(files::PlanFile& file) {
    const plan::Plan plan = file.plan();
    plan::Heading heading = plan.heading();
    heading.name += '+';
    plan::PlanBuilder edit(plan);
    edit.heading(heading);
    const plan::Plan edited = std::move(edit).build();
    if (!file.save(edited, Instant{std::chrono::seconds(1805155200)})) {
        return;  // tables that look like ours and are not may refuse; the file stays as it was
    }
    const auto again = files::PlanFile::open(ownFile(), files::Access::ReadOnly);
    require(again.has_value() && again->plan() == edited);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::filesystem::path path = ownFile();
    {
        std::ofstream out(path, std::ios::binary | std::ios::trunc);
        out.write(reinterpret_cast<const char*>(data), static_cast<std::streamsize>(size));
    }
    {
        auto file = files::PlanFile::open(path, files::Access::ReadWrite);
        if (file) {
            checkSaving(*file);
        } else {
            require(!file.error().fault.name.empty());
        }
    }
    std::error_code ignored;
    for (const char* tail : {"", "-journal", "-wal", "-shm"}) {
        std::filesystem::remove(path.string() + tail, ignored);
    }
    return 0;
}
