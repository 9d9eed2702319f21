#include "core/movement/column_figures.h"

namespace crosstick::movement {

Metres perMan(const plan::Column& column) {
    constexpr Metres kBody{0.4};
    return (column.apart + kBody) / column.files;
}

ColumnFigures columnFigures(const plan::Force& force, const plan::Column& column) {
    ColumnFigures figures;
    for (std::size_t n = 0; n < column.serials.size(); ++n) {
        const plan::Serial& serial = column.serials[n];
        const plan::Element* element = force.element(serial.element);
        const int people = element == nullptr ? 0 : element->people;
        const bool isLast = n + 1 == column.serials.size();
        const Metres behind = isLast ? Metres(0) : serial.behind.value_or(column.interval);
        const Metres length = perMan(column) * people;
        figures.elements.push_back({serial.element, length, figures.length, behind});
        figures.length += length + behind;
        figures.people += people;
    }
    return figures;
}

Minutes passTime(Metres length, KilometresPerHour rate) {
    constexpr double kMetresAMinute = 1000.0 / 60;
    return Minutes(length.value() / (rate.value() * kMetresAMinute));
}

}  // namespace crosstick::movement
