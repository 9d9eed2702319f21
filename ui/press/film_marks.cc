#include "ui/press/film_marks.h"

#include <vector>

#include <QPolygonF>

namespace crosstick::press {
namespace {

constexpr double kClip = 7;
constexpr double kNotch = 3;
constexpr double kNotchOfFive = 10;
constexpr double kDeep = 4;
constexpr double kApart = 4;

/// Widths of the notches from the corner to the left.
std::vector<double> notches(int place) {
    std::vector<double> widths(static_cast<std::size_t>(place % 5), kNotch);
    widths.insert(widths.end(), static_cast<std::size_t>(place / 5), kNotchOfFive);
    return widths;
}

}  // namespace

double notchesWide(int place) {
    double wide = kClip + kApart;
    for (const double notch : notches(place)) {
        wide += notch + kApart;
    }
    return wide;
}

QPainterPath filmOutline(const QRectF& film, int place) {
    QPainterPath path(film.topLeft());
    std::vector<double> cuts;  // where the edge goes down and up again, from the right
    double x = film.right() - kClip - kApart;
    for (const double wide : notches(place)) {
        cuts.push_back(x);
        cuts.push_back(x - wide);
        x -= wide + kApart;
    }
    for (std::size_t n = cuts.size(); n >= 2; n -= 2) {
        path.lineTo(cuts[n - 1], film.top());
        path.lineTo(cuts[n - 1], film.top() + kDeep);
        path.lineTo(cuts[n - 2], film.top() + kDeep);
        path.lineTo(cuts[n - 2], film.top());
    }
    path.lineTo(film.right() - kClip, film.top());
    path.lineTo(film.right(), film.top() + kClip);
    path.lineTo(film.bottomRight());
    path.lineTo(film.bottomLeft());
    path.closeSubpath();
    return path;
}

QPainterPath nib(QPointF corner) {
    QPainterPath path;
    path.addPolygon(QPolygonF({{5, 2}, {9, 2}, {11, 7}, {7, 14}, {3, 7}, {5, 2}}));
    path.moveTo(7, 8);
    path.lineTo(7, 14);
    return path.translated(corner);
}

QPainterPath pin(QPointF corner) {
    QPainterPath path;
    path.addEllipse(QPointF(7, 5.5), 3.5, 3.5);
    path.moveTo(7, 9);
    path.lineTo(7, 14.5);
    return path.translated(corner);
}

QPainterPath halvedSheet(QPointF corner) {
    QPainterPath path;
    path.addRect(2, 3, 10, 10);
    path.moveTo(7, 3);
    path.lineTo(7, 13);
    for (const double x : {8.5, 10.0}) {  // the half that is left of its strength
        path.moveTo(x, 3);
        path.lineTo(x, 13);
    }
    return path.translated(corner);
}

}  // namespace crosstick::press
