#include <algorithm>
#include <ostream>
#include <set>
#include <sstream>

#include <GeographicLib/Config.h>
#include <erfa.h>
#include <erfaextra.h>
#include <fmt/format.h>
#include <gdal.h>
#include <geos_c.h>
#include <proj.h>
#include <sqlite3.h>
#include <tl/expected.hpp>

#include <QtGlobal>
#include <qpdf/qpdf-c.h>

#include "app/command.h"
#include "app/commands/answers.h"

namespace crosstick::app {
namespace {

struct Library {
    std::string name, version;
};

std::string dotted(int major, int minor, int patch) {
    return fmt::format("{}.{}.{}", major, minor, patch);
}

/// What runs, where the library tells; else what was compiled in.
std::vector<Library> libraries() {
    return {
        {"Qt", qVersion()},
        {"GDAL", GDALVersionInfo("RELEASE_NAME")},
        {"PROJ", proj_info().version},
        {"GEOS", GEOSversion()},
        {"GeographicLib", GEOGRAPHICLIB_VERSION_STRING},
        {"ERFA", eraVersion()},
        {"SQLite", sqlite3_libversion()},
        {"qpdf", qpdf_get_qpdf_version()},
        {"CLI11", CLI11_VERSION},
        {"fmt", dotted(FMT_VERSION / 10000, FMT_VERSION / 100 % 100, FMT_VERSION % 100)},
        {"JSON for Modern C++",
         dotted(NLOHMANN_JSON_VERSION_MAJOR, NLOHMANN_JSON_VERSION_MINOR, NLOHMANN_JSON_VERSION_PATCH)},
        {"expected", dotted(TL_EXPECTED_VERSION_MAJOR, TL_EXPECTED_VERSION_MINOR, TL_EXPECTED_VERSION_PATCH)},
    };
}

struct ProjData {
    std::string database, epsg;  ///< where it lies, "v10.076, 2022-08-31"
    std::vector<std::string> folders;
    std::vector<std::string> grids;  ///< names of files, in order
};

bool isGrid(const std::filesystem::path& file) {
    static constexpr std::array<std::string_view, 7> kGridKinds{".tif", ".gsb", ".gtx", ".gvb", ".ct2", ".lla", ".byn"};
    const std::string kind = file.extension().string();
    return std::find(kGridKinds.begin(), kGridKinds.end(), kind) != kGridKinds.end();
}

std::vector<std::string> gridsIn(const std::vector<std::string>& folders) {
    std::set<std::string> grids;
    for (const std::string& folder : folders) {
        std::error_code fault;
        for (auto entry = std::filesystem::directory_iterator(folder, fault);
             !fault && entry != std::filesystem::directory_iterator(); entry.increment(fault)) {
            if (isGrid(entry->path())) {
                grids.insert(entry->path().filename().string());
            }
        }
    }
    return {grids.begin(), grids.end()};
}

ProjData projData() {
    struct FreeContext {
        void operator()(PJ_CONTEXT* context) const { proj_context_destroy(context); }
    };
    const std::unique_ptr<PJ_CONTEXT, FreeContext> context(proj_context_create());
    proj_context_set_enable_network(context.get(), 0);
    const auto metadata = [&](const char* key) {
        const char* text = proj_context_get_database_metadata(context.get(), key);
        return std::string(text == nullptr ? "" : text);
    };
    ProjData data;
    const char* path = proj_context_get_database_path(context.get());
    data.database = path == nullptr ? "" : path;
    data.epsg = metadata("EPSG.VERSION") + ", " + metadata("EPSG.DATE");
    std::istringstream folders(proj_info().searchpath);
    for (std::string folder; std::getline(folders, folder, ':');) {
        data.folders.push_back(folder);
    }
    if (!data.database.empty()) {
        data.folders.push_back(std::filesystem::path(data.database).parent_path().string());
    }
    data.grids = gridsIn(data.folders);
    return data;
}

/// The lettering faces that stand where the program looks for them.
std::vector<std::string> facesIn(const std::filesystem::path& folder) {
    std::set<std::string> faces;
    std::error_code fault;
    for (auto entry = std::filesystem::directory_iterator(folder, fault);
         !fault && entry != std::filesystem::directory_iterator(); entry.increment(fault)) {
        const std::string kind = entry->path().extension().string();
        if (kind == ".otf" || kind == ".ttf") {
            faces.insert(entry->path().stem().string());
        }
    }
    return {faces.begin(), faces.end()};
}

struct About {
    std::vector<Library> libraries;
    Result<geodesy::MagneticModel> model;
    ProjData proj;
    std::vector<std::string> faces;
    std::filesystem::path copies;  ///< of map sheets
    std::int64_t copiesBytes = 0, copiesMost = 0;
};

Json jsonOf(const About& about) {
    Json json;
    json["crosstick"] = CROSSTICK_VERSION;
    json["libraries"] = Json::array();
    for (const Library& library : about.libraries) {
        json["libraries"].push_back({{"name", library.name}, {"version", library.version}});
    }
    json["magnetic_model"] = about.model ? Json(about.model->name()) : Json();
    json["magnetic_model_from_year"] = 2025.0;
    json["magnetic_model_to_year"] = 2030.0;
    json["proj_database"] = about.proj.database.empty() ? Json() : Json(about.proj.database);
    json["epsg_version"] = about.proj.epsg;
    json["grids"] = about.proj.grids;
    json["faces"] = about.faces;
    json["sheet_copies"] = about.copies.string();
    json["sheet_copies_bytes"] = about.copiesBytes;
    json["sheet_copies_most_bytes"] = about.copiesMost;
    return json;
}

std::string listed(const std::vector<std::string>& names) {
    return names.empty() ? "none" : fmt::format("{}", fmt::join(names, ", "));
}

void writeForPeople(std::ostream& out, const About& about) {
    const auto row = [&](std::string_view name, std::string_view text) {
        out << fmt::format("  {:<21}{}\n", name, text);
    };
    out << "Crosstick " << CROSSTICK_VERSION << ", films, route cards and figures for a map sheet.\n";
    out << "A planning and training aid: check declination and datum; the leader's judgement comes first.\n\n";
    for (const Library& library : about.libraries) {
        row(library.name, library.version);
    }
    row("Magnetic model", about.model ? about.model->name() + ", 2025.0 to 2030.0" : std::string("missing"));
    row("PROJ database", about.proj.database + ", EPSG " + about.proj.epsg);
    row("Transformation grids", listed(about.proj.grids));
    row("Lettering faces", listed(about.faces));
    row("Copies of sheets",
        fmt::format("{}, {:.1f} MB of at most {:.0f}; may be thrown away", about.copies.string(),
                    static_cast<double>(about.copiesBytes) / 1e6, static_cast<double>(about.copiesMost) / 1e6));
}

enum class Form { ForPeople, Json };

Exit tellAbout(Form form, const Surroundings& surroundings) {
    const sheets::SheetCache& cache = surroundings.reader.cache();
    const About about{libraries(),      magneticModel(surroundings),
                      projData(),       facesIn(surroundings.share / "faces"),
                      cache.folder(),   cache.bytes(),
                      cache.mostBytes()};
    if (form == Form::Json) {
        say(surroundings.out, Json::array({jsonOf(about)}));
    } else {
        writeForPeople(surroundings.out, about);
    }
    return about.model ? Exit::Done : couldNot(surroundings, about.model.error());
}

}  // namespace

void addAbout(CLI::App& program, Action& action) {
    auto json = std::make_shared<bool>(false);
    CLI::App* command = program.add_subcommand(
        "about",
        "Versions of the program and of every library, the magnetic model, PROJ's database and grids, the faces.");
    command->add_flag("--json", *json, "One array with one object");
    command->callback([json, &action] {
        action = [json](const Surroundings& surroundings) {
            return tellAbout(*json ? Form::Json : Form::ForPeople, surroundings);
        };
    });
}

}  // namespace crosstick::app
