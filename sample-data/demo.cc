#include "sample-data/demo.h"

#include <array>

#include "core/files/plan_file.h"
#include "core/sheets/sheet_file.h"
#include "sample-data/plan/demo_plan.h"
#include "sample-data/sheet/sheet.h"

namespace crosstick::demo {
namespace {

constexpr std::array kFiles{"plan.gpkg", "sheet.tif", "elevation.tif"};

Result<void> roomFor(const DemoOrder& order) {
    std::error_code fault;
    std::filesystem::create_directories(order.folder, fault);
    if (!std::filesystem::is_directory(order.folder)) {
        return fail(kFolderMissing, {{"folder", order.folder.string()}});
    }
    for (const char* name : kFiles) {
        const auto file = order.folder / name;
        if (!std::filesystem::exists(file)) {
            continue;
        }
        if (order.existing == Existing::Keep) {
            return fail(kFilesThere, {{"file", file.string()}});
        }
        std::filesystem::remove(file, fault);
    }
    return {};
}

/// The day the exercise's order is given: no clock has a part in the demo's bytes.
Instant orderTime() {
    return *parseIsoTime("2027-03-13T15:00:00Z");
}

}  // namespace

Result<void> makeDemo(const DemoOrder& order) {
    if (auto room = roomFor(order); !room) {
        return room;
    }
    const Sources sources{order.share / "demo", order.share / "faces"};
    const auto island = readIsland(sources.lists / "island.json");
    if (!island) {
        return tl::unexpected(island.error());
    }
    const auto step = [&](std::string_view what) {
        order.progress(what);
        return order.goesOn();
    };
    if (!step("the ground")) {
        return fail(kGivenUp);
    }
    const Ground ground = makeGround(*island);
    if (auto written = writeElevation(ground.heights, order.folder / "elevation.tif"); !written) {
        return written;
    }
    if (!step("the map sheet")) {
        return fail(kGivenUp);
    }
    const auto painted = paintSheet(ground, *island, sources);
    if (!painted) {
        return tl::unexpected(painted.error());
    }
    if (!step("the sheet's file")) {
        return fail(kGivenUp);
    }
    if (auto written = writeSheet(painted->picture, order.folder / "sheet.tif"); !written) {
        return written;
    }
    if (!step("the plan")) {
        return fail(kGivenUp);
    }
    auto sheet = sheets::describeSheet(order.reader, order.folder / "sheet.tif", Uuid{});
    if (!sheet) {
        return tl::unexpected(sheet.error());
    }
    sheet->path = "sheet.tif";
    const auto plan = demoPlan(sources.lists, std::move(*sheet));
    if (!plan) {
        return tl::unexpected(plan.error());
    }
    const auto file = files::PlanFile::create(order.folder / "plan.gpkg", *plan, orderTime());
    return file ? Result<void>{} : tl::unexpected(file.error());
}

}  // namespace crosstick::demo
