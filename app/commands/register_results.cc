#include <algorithm>
#include <cctype>

#include "app/beside.h"
#include "app/commands/register_forms.h"
#include "app/faults.h"
#include "app/progress_line.h"
#include "core/files/plan_file.h"
#include "core/film/new_plan.h"
#include "core/registration/placed_sheet.h"
#include "core/registration/registered_sheet.h"

namespace crosstick::app {
namespace {

using Written = std::vector<std::string>;

bool isTiff(const std::filesystem::path& file) {
    std::string ending = file.extension().string();
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return ending == ".tif" || ending == ".tiff";
}

/// Our copy of the picture, and how far it is.
Result<std::filesystem::path> copyOf(const std::filesystem::path& file, const Surroundings& surroundings) {
    ProgressLine line(surroundings.err, "preparing the picture");
    return surroundings.reader.sheet(file, line.watch());
}

Result<void> writeTiff(const Registered& registered, const std::filesystem::path& out,
                       const Surroundings& surroundings) {
    std::error_code ignored;
    if (std::filesystem::equivalent(registered.file, out, ignored)) {
        return fail(kInTheWay, {{"file", out.string()}});
    }
    const auto raster = copyOf(registered.file, surroundings).and_then([](const std::filesystem::path& copy) {
        return sheets::Raster::open(copy);
    });
    if (!raster) {
        return tl::unexpected(raster.error());
    }
    ProgressLine line(surroundings.err, "writing the sheet");
    return registration::writePlaced(*raster, registered.fit.model, registered.crs, registered.scale, out,
                                     line.watch());
}

Result<plan::Sheet> placedByFit(const Registered& registered, const Uuid& id, const Surroundings& surroundings) {
    auto sheet = registration::registeredSheet(registered.report, registered.file, id, registered.fit.model,
                                               registered.crs, registered.scale);
    if (!sheet) {
        return sheet;
    }
    // Read to its end once, so that no plan is begun on a picture that breaks off.
    if (const auto copy = copyOf(registered.file, surroundings); !copy) {
        return tl::unexpected(copy.error());
    }
    std::error_code ignored;
    sheet->bytes = static_cast<std::int64_t>(std::filesystem::file_size(registered.file, ignored));
    auto sum = sheets::fileSha256(registered.file);
    if (!sum) {
        return tl::unexpected(sum.error());
    }
    sheet->sha256 = std::move(*sum);
    for (const registration::Mark& mark : registered.marks) {
        if (sheet->marks.size() < plan::kMostGridMarks) {
            sheet->marks.push_back({{mark.at.x, mark.at.y}, mark.place});
        }
    }
    return sheet;
}

/// Of a model that only new pixels can follow: a sheet beside the plan.
Result<plan::Sheet> laidBesidePlan(const Registered& registered, const std::filesystem::path& plan, const Uuid& id,
                                   const Surroundings& surroundings) {
    auto file = plan;
    file.replace_extension(".tif");
    if (std::filesystem::exists(file)) {
        return fail(kInTheWay, {{"file", file.string()}});
    }
    return writeTiff(registered, file, surroundings).and_then([&] {
        return sheets::describeSheet(surroundings.reader, file, id, {registered.scale, registered.crs});
    });
}

Result<Written> writePlan(const Registered& registered, const std::filesystem::path& out,
                          const Surroundings& surroundings) {
    if (std::filesystem::exists(out)) {
        return fail(kInTheWay, {{"file", out.string()}});
    }
    IdSource ids(surroundings.seed);
    auto sheet = registered.fit.model.placement() ? placedByFit(registered, ids.next(), surroundings)
                                                  : laidBesidePlan(registered, out, ids.next(), surroundings);
    if (!sheet) {
        return tl::unexpected(sheet.error());
    }
    const std::string file = sheet->path;
    sheet->path = asSeenFrom(std::filesystem::absolute(out).parent_path(), file);
    plan::Heading heading;
    heading.name = out.stem().string();
    heading.zone = *timeZone('Z');
    heading.date = localDate(surroundings.now, heading.zone);
    heading.prepared = surroundings.now;
    auto plan = film::planOnSheet(std::move(*sheet), std::move(heading), ids.next());
    if (!plan) {
        return tl::unexpected(plan.error());
    }
    return files::PlanFile::create(out, *plan, surroundings.now).map([&](const files::PlanFile&) {
        return Written{out.string() + ": a new plan on sheet " + file};
    });
}

}  // namespace

Result<Written> writeResult(const Registered& registered, const std::string& out, const Surroundings& surroundings) {
    if (!isTiff(out)) {
        return writePlan(registered, out, surroundings);
    }
    return writeTiff(registered, out, surroundings).map([&] { return Written{out + ": the sheet, in its grid"}; });
}

}  // namespace crosstick::app
