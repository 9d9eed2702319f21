#include "ui/press/facts.h"

namespace crosstick::press {

double drawFacts(CardPen& pen, const std::vector<CardFact>& facts, const FactColumn& column) {
    constexpr double kLabel = 1.8;
    constexpr double kValue = 2.0;
    double base = column.firstBase - column.step;
    for (const CardFact& fact : facts) {
        const Hand hand{kValue, fact.weight};
        base += column.step;
        pen.write(fact.label, {column.left, base}, {kLabel, drawing::Weight::Regular});
        const auto rows = packed(atCommas(fact.value), column.right - column.valueLeft, hand);
        for (std::size_t n = 0; n < rows.size(); ++n) {
            base += n == 0 ? 0 : column.row;
            pen.write(rows[n], {column.valueLeft, base}, hand);
        }
    }
    return base;
}

}  // namespace crosstick::press
