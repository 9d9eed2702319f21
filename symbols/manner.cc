#include "symbols/manner.h"

#include "core/measures/catalogue.h"

namespace crosstick::symbols {
namespace {

Standing standingOf(const plan::Measure& measure) {
    const bool planned = measure.standing == plan::Standing::Planned || measure.state == plan::PlaceState::Assumed;
    return planned ? Standing::Planned : Standing::Present;
}

}  // namespace

Manner mannerOf(const plan::Measure& measure, Place place, const Engraving& engraving) {
    const bool isEnemy = measure.whose == plan::Whose::Enemy;
    const bool onePen = engraving.pens == PenMode::OnePen;
    Manner manner;
    const measures::Entry* entry = measures::find(measure.kind);
    const measures::Colour colour = entry == nullptr ? measures::Colour::OfItsSide : entry->colour;
    manner.ink = onePen                                      ? drawing::Ink::Black
                 : colour == measures::Colour::Obstacle      ? drawing::Ink::Green
                 : colour == measures::Colour::Contamination ? drawing::Ink::Yellow
                 : isEnemy                                   ? drawing::Ink::Red
                 : colour == measures::Colour::OfItsForce    ? drawing::Ink::Blue
                 : place == Place::OnRoute                   ? drawing::Ink::Blue
                                                             : drawing::Ink::Black;
    manner.side = isEnemy ? Side::Enemy : Side::Own;
    manner.standing = entry != nullptr && entry->dashed == measures::Dashed::Always  ? Standing::Planned
                      : entry != nullptr && entry->dashed == measures::Dashed::Never ? Standing::Present
                                                                                     : standingOf(measure);
    manner.halo = engraving.surface == Surface::LightTable ? drawing::Halo::Paper : drawing::Halo::None;
    manner.doubled = isEnemy && onePen;
    return manner;
}

Manner routeManner(const Engraving& engraving) {
    Manner manner;
    manner.ink = engraving.pens == PenMode::OnePen ? drawing::Ink::Black : drawing::Ink::Blue;
    manner.halo = engraving.surface == Surface::LightTable ? drawing::Halo::Paper : drawing::Halo::None;
    return manner;
}

}  // namespace crosstick::symbols
