#pragma once

#include <functional>
#include <set>

#include "core/film/page.h"
#include "symbols/engrave.h"
#include "ui/press/pdf.h"

namespace crosstick::press {

/// Which films are composed, and how.
struct FilmsOrder {
    const plan::Plan& plan;
    std::vector<plan::FilmPtr> films;
    film::PaperChoice papers = film::usualPapers();
    std::optional<Scale> scale = std::nullopt;           ///< overrides every film's own
    std::optional<drawing::Gauge> gauge = std::nullopt;  ///< overrides the plan's and every film's own
    symbols::LegendExtent legend = symbols::LegendExtent::NotStandard;
    symbols::PenMode pens = symbols::PenMode::Colour;
    geodesy::AngleUnit angles = geodesy::AngleUnit::Degrees;
    const geodesy::MagneticModel* model = nullptr;
    const sheets::HeightSource* heights = nullptr;
};

/// Which pens one shown thing is drawn with.
struct ItemInks {
    plan::ItemId item;
    std::set<drawing::Ink> inks;
};

/// One film on its paper.
struct FilmPage {
    plan::FilmPtr film;
    Scale scale;
    std::string crs;  ///< of the sheet's printed grid
    film::Page page;
    drawing::Drawing drawing;  ///< everything, in page millimetres
    GroundOnPage ground;
    std::vector<symbols::Remark> remarks;
    std::vector<ItemInks> inks;
};

struct FilmSet {
    std::vector<FilmPage> pages;
    /// What the films had to do without (the G-M angle outside the model's dates, a route's figures), in words at the
    /// edge.
    std::vector<Error> notes;
};

/// Frame, page, marks engraved clear of the furniture, furniture: films as they will be printed or shown before
/// printing. A plan without window and ticks gets those that film::proposeRegistration says. Errors: film/...,
/// geodesy/...
[[nodiscard]] Result<FilmSet> composeFilms(const FilmsOrder& order);
/// The same film by film, each handed over as it is done; gives the notes.
using TakePage = std::function<void(FilmPage&&)>;
[[nodiscard]] Result<std::vector<Error>> composeFilms(const FilmsOrder& order, const TakePage& take);

/// Films and the PDF of them, the same as composeFilms and pdfBytes give. While one film is painted, another thread
/// composes the next: model and heights of the order belong to that thread meanwhile. Needs a QGuiApplication.
struct PrintedFilms {
    FilmSet set;
    std::string pdf;
};
[[nodiscard]] Result<PrintedFilms> printFilms(const FilmsOrder& order, const PdfFacts& facts, const Faces& faces,
                                              const Inks& inks);

/// A film as a PDF page, one layer a film.
[[nodiscard]] PdfPage pdfPage(const FilmPage& page);
[[nodiscard]] std::vector<PdfPage> pdfPages(const FilmSet& set);
/// Title, author, marking and date of a plan's papers; the date is that of its preparation, else midnight of its day.
[[nodiscard]] PdfFacts pdfFacts(const plan::Plan& plan);

}  // namespace crosstick::press
