#include "ui/copies/copies.h"

namespace crosstick::copies {

MadeSheets makeSheets(const plan::Plan& plan, const CopyWish& wish, const geodesy::MagneticModel* model,
                      const sheets::HeightSource* heights) {
    MadeSheets made;
    press::FilmsOrder order{plan, plan.films()};
    order.papers = wish.papers;
    order.pens = wish.pens;
    order.angles = wish.angles;
    order.model = model;
    order.heights = heights;
    auto films = press::composeFilms(order);
    if (!films) {
        made.fault = films.error();
    } else {
        std::vector<press::PdfPage> pages = press::pdfPages(*films);
        for (std::size_t n = 0; n < pages.size(); ++n) {
            made.films.push_back({QString::fromStdString(films->pages[n].film->name), std::move(pages[n]), true});
        }
        made.notes = films->notes;
    }
    for (const plan::RoutePtr& route : plan.routes()) {
        const auto figures = movement::routeFigures(plan, *route, model, heights);
        if (!figures) {
            made.notes.push_back(figures.error());
            continue;
        }
        auto cards = press::routeCard(plan, *figures, wish.angles, model != nullptr ? model->name() : std::string{});
        if (!cards) {
            made.notes.push_back(cards.error());
            continue;
        }
        for (press::CardPage& card : *cards) {
            press::PdfPage page;
            page.paper = film::Paper{card.width, card.height};
            page.drawing = std::move(card.drawing);
            made.cards.push_back({QString::fromStdString(card.name), std::move(page), false});
        }
    }
    return made;
}

}  // namespace crosstick::copies
