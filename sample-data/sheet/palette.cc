#include "sample-data/sheet/palette.h"

#include <algorithm>
#include <cmath>

#include "sample-data/sheet/canvas.h"

namespace crosstick::demo {
namespace {

QColor blend(const QColor& ground, const QColor& over, double share) {
    const auto part = [&](int a, int b) { return static_cast<int>(std::lround(a + (b - a) * share)); };
    return {part(ground.red(), over.red()), part(ground.green(), over.green()), part(ground.blue(), over.blue())};
}

QColor shaded(const QColor& ground, double share) {
    return blend(ground, ink::kShade, ink::kShadeMost * share);
}

/// One ink over one ground: `steps` colours, the last of them the ink itself.
struct Ladder {
    QColor over;
    QColor ground;
    int steps;
};

std::vector<Ladder> ladders() {
    const QColor& land = ink::kLand;
    const QColor& wood = ink::kWood;
    const QColor& sea = ink::kSea;
    const QColor half = shaded(land, 0.5);
    const QColor dark = shaded(land, 1);
    const QColor darkWood = shaded(wood, 1);
    return {{ink::kContour, land, 8},       {ink::kContour, half, 5},      {ink::kContour, dark, 6},
            {ink::kContour, wood, 5},       {ink::kContour, darkWood, 3},  {ink::kBlack, land, 10},
            {ink::kBlack, dark, 5},         {ink::kBlack, wood, 5},        {ink::kBlack, sea, 5},
            {ink::kBlack, ink::kPaper, 10}, {ink::kWater, sea, 8},         {ink::kWater, land, 6},
            {ink::kWater, dark, 3},         {ink::kWater, wood, 3},        {ink::kWaterName, sea, 6},
            {ink::kWaterName, land, 5},     {ink::kGrid, land, 6},         {ink::kGrid, dark, 4},
            {ink::kGrid, wood, 4},          {ink::kGrid, sea, 5},          {ink::kTree, wood, 6},
            {ink::kTree, darkWood, 3},      {ink::kWoodName, land, 4},     {ink::kWoodName, wood, 6},
            {ink::kScree, land, 4},         {ink::kScree, dark, 3},        {ink::kSand, land, 4},
            {ink::kSand, sea, 3},           {ink::kBlack, ink::kRoadA, 4}, {ink::kBlack, ink::kRoadB, 4},
            {ink::kTuft, land, 4},          {ink::kTuft, dark, 4},         {ink::kIslandName, land, 3},
            {ink::kIslandName, dark, 2},    {ink::kSquareName, sea, 2},    {ink::kSquareName, land, 2}};
}

}  // namespace

std::vector<QRgb> sheetPalette() {
    std::vector<QRgb> inks;
    const auto add = [&](const QColor& colour) {
        if (std::find(inks.begin(), inks.end(), colour.rgb()) == inks.end()) {
            inks.push_back(colour.rgb());
        }
    };
    for (const QColor& colour : {ink::kPaper, ink::kSea, ink::kQuarry, ink::kBuilding, ink::kRoadA, ink::kRoadB}) {
        add(colour);
    }
    constexpr int kSteps = 24;  // one step of green each: no eye tells them apart
    for (const QColor& ground : {ink::kLand, ink::kWood}) {
        for (int n = 0; n <= kSteps; ++n) {
            add(shaded(ground, static_cast<double>(n) / kSteps));
        }
    }
    for (const Ladder& ladder : ladders()) {
        for (int n = 1; n <= ladder.steps; ++n) {
            add(blend(ladder.ground, ladder.over, static_cast<double>(n) / ladder.steps));
        }
    }
    return inks;
}

InkFinder::InkFinder(std::vector<QRgb> inks) : inks_(std::move(inks)), known_(std::size_t{1} << 24U, kUnknown) {}

std::uint16_t InkFinder::nearest(QRgb colour) const {
    std::uint16_t best = 0;
    int least = 1 << 30;
    for (std::size_t n = 0; n < inks_.size(); ++n) {
        const int r = qRed(inks_[n]) - qRed(colour);
        const int g = qGreen(inks_[n]) - qGreen(colour);
        const int b = qBlue(inks_[n]) - qBlue(colour);
        const int away = 2 * r * r + 4 * g * g + b * b;
        if (away < least) {
            least = away;
            best = static_cast<std::uint16_t>(n);
        }
    }
    return best;
}

}  // namespace crosstick::demo
