#include <algorithm>

#include "core/measures/catalogue.h"
#include "ui/copies/copies.h"

namespace crosstick::copies {
namespace {

/// The names of what a red lamp would take away, each once.
void lookUnderRedLight(Sheet& sheet, const plan::Plan& plan, const press::FilmPage& page) {
    const press::Inks inks = press::paperInks();
    for (const press::ItemInks& shown : page.inks) {
        double most = 0;
        for (const drawing::Ink ink : shown.inks) {
            most = std::max(most, press::shareUnderRedLight(inks.of(ink)));
        }
        const plan::MeasurePtr measure = plan.measure(shown.item);
        if (measure && most > press::kFaintUnderRedLight) {
            const measures::Entry* entry = measures::find(measure->kind);
            const std::string label = movement::label(*measure);
            const std::string kind(entry != nullptr ? entry->name : std::string_view(measure->kind));
            (most > press::kLostUnderRedLight ? sheet.lost : sheet.faint)
                << QString::fromStdString(label.empty() ? kind : label);
        }
    }
    sheet.lost.removeDuplicates();
    sheet.faint.removeDuplicates();
}

}  // namespace

MadeSheets makeSheets(const plan::Plan& plan, const CopyWish& wish, const geodesy::MagneticModel* model,
                      const sheets::HeightSource* heights, work::Course& course) {
    MadeSheets made;
    press::FilmsOrder order{plan, plan.films()};
    order.papers = wish.papers;
    order.pens = wish.pens;
    order.angles = wish.angles;
    order.legend = wish.legend;
    order.model = model;
    order.heights = heights;
    auto films = press::composeFilms(order);
    if (!films) {
        made.fault = films.error();
    } else {
        std::vector<press::PdfPage> pages = press::pdfPages(*films);
        for (std::size_t n = 0; n < pages.size(); ++n) {
            Sheet sheet{QString::fromStdString(films->pages[n].film->name), std::move(pages[n])};
            lookUnderRedLight(sheet, plan, films->pages[n]);
            made.films.push_back(std::move(sheet));
        }
        made.notes = films->notes;
    }
    makePapers(made, plan, wish, model, heights, course);
    return made;
}

Result<std::string> pdfOf(const PdfOrder& order, Kind kind, work::Course& course) {
    const auto faces = press::Faces::open(order.share / "faces");  // a face serves the thread that opened it
    if (!faces) {
        return tl::unexpected(faces.error());
    }
    const press::Inks inks = kind == Kind::Films ? order.films : press::onePenInks();
    const auto& sheets = kind == Kind::Films ? order.sheets->films : order.sheets->cards;
    press::PdfPainting painting(*faces, inks);
    int done = 0;
    for (const Sheet& sheet : sheets) {
        if (course.isStopped()) {
            return std::string();
        }
        course.tell(done++, static_cast<int>(sheets.size()));
        painting.add(sheet.page);
    }
    return std::move(painting).finished(order.facts);
}

}  // namespace crosstick::copies
