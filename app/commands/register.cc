#include <fstream>
#include <iterator>
#include <ostream>

#include "app/commands/register_forms.h"
#include "app/faults.h"
#include "app/progress_line.h"
#include "app/wording/wording.h"
#include "core/registration/faults.h"
#include "core/registration/mark_rows.h"
#include "core/registration/registered_sheet.h"

namespace crosstick::app {
namespace {

struct Options {
    std::string image, marks, crs, model = "auto", square, points, out;
    std::optional<double> scale;
    bool find = false, json = false;
};

std::optional<registration::Kind> wishOf(const std::string& model) {
    for (const registration::Kind kind : registration::kKinds) {
        if (model == nameOf(kind)) {
            return kind;
        }
    }
    return std::nullopt;
}

/// Of a list's file no more than can be read as one, and a byte.
Result<std::string> listFrom(const std::string& file) {
    std::ifstream in(file, std::ios::binary);
    std::string text(registration::kLongestList + 1, '\0');
    if (!in || !in.read(text.data(), static_cast<std::streamsize>(text.size())).eof()) {
        return in ? Result<std::string>(text) : fail(kCannotRead, {{"file", file}});
    }
    text.resize(static_cast<std::size_t>(in.gcount()));
    return text;
}

/// Says each bad row on err; nothing where there is one.
template <class Row>
std::optional<std::vector<Row>> goodRows(const Result<registration::Rows<Row>>& rows, const std::string& file,
                                         const Surroundings& surroundings) {
    if (!rows) {
        surroundings.err << "crosstick: " << file << ": " << words(rows.error()) << '\n';
        return std::nullopt;
    }
    for (const Error& error : rows->bad) {
        const auto line = std::find_if(error.arguments.begin(), error.arguments.end(),
                                       [](const Argument& argument) { return argument.key == "line"; });
        const std::string where =
            line == error.arguments.end() ? "" : " line " + std::to_string(std::get<std::int64_t>(line->value));
        surroundings.err << "crosstick: " << file << where << ": " << words(error) << '\n';
    }
    return rows->bad.empty() ? std::optional(rows->good) : std::nullopt;
}

/// A scan may lie in degrees or nowhere; only a grid is one that marks can be read in.
std::string crsFor(const Options& options, const sheets::FileReport& report) {
    return options.crs.empty() && geodesy::describeCrs(report.crs) ? report.crs : options.crs;
}

Exit answer(const Options& options, const Registered& registered, const Surroundings& surroundings) {
    Result<std::vector<std::string>> written;
    if (!options.out.empty()) {
        written = writeResult(registered, options.out, surroundings);
    }
    if (!written) {
        return couldNot(surroundings, written.error());
    }
    if (options.json) {
        say(surroundings.out, registeredJson(registered));
        return Exit::Done;
    }
    writeRegistered(surroundings.out, registered);
    for (const std::string& line : *written) {
        surroundings.out << line << '\n';
    }
    return Exit::Done;
}

/// To the marks, and where it is wished to the crossings that they lead to.
Result<registration::FoundFit> fitTo(const std::vector<registration::Mark>& marks, const Options& options,
                                     const Surroundings& surroundings) {
    if (!options.find) {
        return registration::fitMarks(marks, wishOf(options.model)).map([](registration::Fit fit) {
            return registration::FoundFit{std::move(fit), {}};
        });
    }
    ProgressLine line(surroundings.err, "preparing the picture");
    const auto raster =
        surroundings.reader.sheet(options.image, line.watch()).and_then([](const std::filesystem::path& copy) {
            return sheets::Raster::open(copy);
        });
    return raster ? registration::fitWithCrossings(registration::greyOf(*raster), marks, wishOf(options.model))
                  : Result<registration::FoundFit>(tl::unexpected(raster.error()));
}

Exit registerPicture(const Options& options, const Surroundings& surroundings) {
    const auto report = surroundings.reader.inspect(options.image);
    if (!report) {
        return couldNot(surroundings, report.error());
    }
    auto grid = registration::PrintedGrid::of(crsFor(options, *report), options.square);
    if (!grid) {
        return couldNot(surroundings, grid.error());
    }
    const auto read =
        listFrom(options.marks).and_then([&](const std::string& text) { return registration::readMarks(text, *grid); });
    const auto marks = goodRows(read, options.marks, surroundings);
    const auto points = options.points.empty() ? std::optional(std::vector<registration::PixelPoint>{})
                                               : goodRows(listFrom(options.points).and_then(registration::readPoints),
                                                          options.points, surroundings);
    if (!marks || !points) {
        return Exit::CouldNot;
    }
    const auto found = fitTo(*marks, options, surroundings);
    if (!found) {
        return couldNot(surroundings, found.error());
    }
    const registration::Fit& fit = found->fit;
    const auto given = options.scale ? std::optional(Scale{*options.scale}) : std::nullopt;
    const auto scale = registration::scaleOf(*report, fit.model, grid->crs(), given);
    const registration::PixelPoint middle{report->columns / 2.0, report->rows / 2.0};
    const auto figures = registration::figuresOf(fit.model, middle, scale, report->dotsPerMetre);
    const auto crossings = options.find ? std::optional(found->crossings) : std::nullopt;
    return answer(options, {options.image, *report, grid->crs(), scale, *marks, fit, crossings, figures, *points},
                  surroundings);
}

constexpr std::string_view kManual =
    R"(Lays a scan or photo of a map sheet on its grid by marks, and says how good that is.

MARKS is a list with one mark a row, in pixels from the outer corner of the picture's upper left
pixel, x right and y down:

  x,y,easting,northing     metres in the grid (--crs)
  x,y,grid                 as the sheet prints it: "18S UJ 45 62", then "46 63"; "UJ 45 62";
                           "45 62" alone with --square "18S UJ"; latitude and longitude, on the
                           sheet's own datum: "64.25 -155.5", "64 15 00N 155 30 00W"

The fit is by least squares in the sheet's grid: similarity, affine, projective or quadratic, the
one that the marks speak for. Marks that are blunders are left out and named. With --find and at
least three marks on crossings of the grid the others are looked for, and the fit is to all.

  crosstick register scan.png --marks marks.csv --crs EPSG:32618 -o sheet.tif
  crosstick register photo.jpg --marks marks.csv --at points.csv --json)";

}  // namespace

void addRegister(CLI::App& program, Action& action) {
    auto options = std::make_shared<Options>();
    auto* command = program.add_subcommand("register", std::string(kManual));
    command->add_option("IMAGE", options->image, "The scan or photo: TIFF, PNG, JPEG, BMP, WebP, PDF")->required();
    command->add_option("--marks", options->marks, "The list of marks")->required()->type_name("MARKS");
    command->add_option("--crs", options->crs, "The sheet's grid: EPSG:32618")->type_name("EPSG:N");
    command->add_option("--square", options->square, "Zone and 100 km square of figures alone: \"18S UJ\"")
        ->type_name("SQUARE");
    command->add_option("--model", options->model, "auto (default), similarity, affine, projective or quadratic")
        ->type_name("MODEL")
        ->check(CLI::IsMember({"auto", "similarity", "affine", "projective", "quadratic"}));
    command
        ->add_option("--scale", options->scale, "The number under the 1 of its scale, where the file does not tell it")
        ->type_name("NUMBER")
        ->check(CLI::Validator(positiveFault, ""));
    command->add_flag("--find", options->find, "Find the grid's other crossings from three marks or more");
    command->add_option("--at", options->points, "A list x,y of points whose place is asked")->type_name("POINTS");
    command->add_option("-o,--out", options->out, "A sheet (.tif), or a plan on this sheet")->type_name("FILE");
    command->add_flag("--json", options->json, "As one JSON object, in full precision");
    command->callback([options, &action] {
        action = [options](const Surroundings& surroundings) { return registerPicture(*options, surroundings); };
    });
}

}  // namespace crosstick::app
