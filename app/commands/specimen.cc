#include "symbols/specimen/specimen.h"

#include <filesystem>
#include <memory>
#include <ostream>

#include "app/command.h"
#include "ui/press/faults.h"
#include "ui/press/gui_start.h"
#include "ui/press/pdf.h"
#include "ui/press/svg.h"

namespace crosstick::app {
namespace {

// Dated by the program and not by the clock: the same program writes the same bytes.
constexpr std::chrono::sys_days kMade = std::chrono::year(2026) / 11 / 1;
constexpr drawing::Box kPicture{0, 0, 12, 12};

struct Asked {
    std::string out, pictures;
    drawing::Gauge gauge;
    bool onePen = false;
};

/// All pages below each other, for a picture that has no pages.
drawing::Drawing inOneColumn(std::vector<symbols::SpecimenPage> pages) {
    drawing::Drawing column;
    for (std::size_t n = 0; n < pages.size(); ++n) {
        column.append(drawing::moved(std::move(pages[n].drawing),
                                     {0, symbols::kSpecimenPaper.height() * static_cast<double>(n)}));
    }
    return column;
}

Result<std::string> pdfOf(std::vector<symbols::SpecimenPage> pages, const press::Faces& faces,
                          const press::Inks& inks) {
    std::vector<press::PdfPage> sheets;
    for (symbols::SpecimenPage& page : pages) {
        press::PdfPage sheet;
        sheet.paper = {PaperMm(symbols::kSpecimenPaper.width()), PaperMm(symbols::kSpecimenPaper.height())};
        sheet.drawing = std::move(page.drawing);
        sheets.push_back(std::move(sheet));
    }
    return press::pdfBytes(sheets, {"Specimen of measures and symbols", "Crosstick", "", Instant{kMade}}, faces, inks);
}

Result<std::string> specimenAs(const std::filesystem::path& file, const Asked& asked, const press::Faces& faces) {
    const press::Inks inks = asked.onePen ? press::onePenInks() : press::paperInks();
    auto pages = symbols::specimen(asked.gauge, asked.onePen ? symbols::PenMode::OnePen : symbols::PenMode::Colour);
    if (file.extension() == ".pdf") {
        return pdfOf(std::move(pages), faces, inks);
    }
    if (file.extension() == ".svg") {
        const auto count = static_cast<double>(pages.size());
        drawing::Box column = symbols::kSpecimenPaper;
        column.bottom *= count;
        return press::svgOf(inOneColumn(std::move(pages)), column, "Specimen of measures and symbols", faces, inks);
    }
    return fail(press::kSpecimenForm, {{"file", file.string()}});
}

Result<void> writePictures(const Asked& asked, const press::Faces& faces) {
    const press::Inks inks = asked.onePen ? press::onePenInks() : press::paperInks();
    for (const measures::Entry& entry : measures::catalogue()) {
        auto written = press::writeWhole(std::filesystem::path(asked.pictures) / (std::string(entry.kind) + ".svg"),
                                         press::svgOf(symbols::tokenOf(entry, kPicture, asked.gauge), kPicture,
                                                      std::string(entry.name), faces, inks));
        if (!written) {
            return written;
        }
    }
    return {};
}

Exit makeSpecimen(const Asked& asked, const Surroundings& surroundings) {
    const press::GuiStart gui;
    const auto faces = press::Faces::open(surroundings.share / "faces");
    if (!faces) {
        return couldNot(surroundings, faces.error());
    }
    const auto written = specimenAs(asked.out, asked, *faces).and_then([&](const std::string& bytes) {
        return press::writeWhole(asked.out, bytes);
    });
    if (!written) {
        return couldNot(surroundings, written.error());
    }
    surroundings.out << asked.out << ": print at true size (100 %) and measure the bar of 100 mm\n";
    if (!asked.pictures.empty()) {
        if (const auto pictures = writePictures(asked, *faces); !pictures) {
            return couldNot(surroundings, pictures.error());
        }
        surroundings.out << asked.pictures << ": a picture of each of " << measures::catalogue().size()
                         << " measures\n";
    }
    return Exit::Done;
}

}  // namespace

void addSpecimen(CLI::App& program, Action& action) {
    auto asked = std::make_shared<Asked>();
    CLI::App* command = program.add_subcommand("specimen", "Everything that can be drawn, on A3, to true size");
    command->add_option("-o,--out", asked->out, "FILE.pdf, or FILE.svg with all pages below each other")->required();
    command->add_option("--pictures", asked->pictures, "A folder for one small SVG picture of each measure");
    command->add_option("--symbol", asked->gauge.symbol, "Height of symbols, mm")
        ->check(CLI::Range(4.0, 8.0))
        ->capture_default_str();
    command->add_option("--pen", asked->gauge.pen, "Width of the pen, mm")
        ->check(CLI::Range(0.25, 0.7))
        ->capture_default_str();
    command->add_option("--letters", asked->gauge.letters, "Height of a capital, mm")
        ->check(CLI::Range(1.8, 4.0))
        ->capture_default_str();
    command->add_flag("--one-pen", asked->onePen, "Everything in black, the enemy by double lines");
    command->callback([asked, &action] {
        action = [asked](const Surroundings& surroundings) { return makeSpecimen(*asked, surroundings); };
    });
}

}  // namespace crosstick::app
