#include <array>

#include "symbols/specimen/pages.h"
#include "symbols/specimen/stage.h"

namespace crosstick::symbols {
namespace {

void addUnit(Flow& flow, const std::string& words, const std::string& caption, drawing::Vector size,
             const drawing::Gauge& gauge, PenMode pens) {
    const drawing::Box room = flow.room(size, {caption});
    Stage stage(room, gauge, pens);
    Exhibit unit{.kind = "unit",
                 .points = {{size.x / 2, words.find("hq") == std::string::npos ? size.y / 2 + 1 : size.y - 4}}};
    unit.fields = {{"unit", words}};
    flow.draw(stage.add(unit).engraved());
}

struct Named {
    const char* words;
    const char* name;
};

constexpr std::array kIcons{Named{"inf", "infantry"},        Named{"rec", "reconnaissance"},
                            Named{"arm", "armour"},          Named{"mech", "mechanised"},
                            Named{"at", "antitank"},         Named{"mor", "mortar"},
                            Named{"art", "field artillery"}, Named{"ad", "air defence"},
                            Named{"eng", "engineer"},        Named{"med", "medical"},
                            Named{"sig", "signal"},          Named{"MP", "military police"},
                            Named{"SF", "special forces"},   Named{"avn", "rotary aviation"},
                            Named{"sup", "supply"},          Named{"trn", "transport"},
                            Named{"mnt", "maintenance"},     Named{"cbrn", "CBRN"},
                            Named{"mtn inf", "mountain"},    Named{"abn inf", "airborne"},
                            Named{"aas inf", "air assault"}, Named{"inf mor", "infantry mortar"}};
constexpr std::array kSides{"own", "eny", "neu", "unk"};

void addFrames(Flow& flow, const drawing::Gauge& gauge, PenMode pens) {
    flow.heading("Frames: friend 1.5 to 1, hostile, neutral, unknown; dashed where planned or suspected");
    for (const char* standing : {"", " plan"}) {
        for (const char* side : kSides) {
            addUnit(flow, std::string(side) + " inf plt" + standing, std::string(side) + " inf plt" + standing,
                    {35, 20}, gauge, pens);
        }
    }
    addUnit(flow, "eny inf plt", "eny, one pen", {35, 20}, gauge, PenMode::OnePen);
    addUnit(flow, "eny inf plt ?", "eny ?, one pen", {35, 20}, gauge, PenMode::OnePen);
    addUnit(flow, "own", "no icon, no size", {35, 20}, gauge, pens);
}

void addIcons(Flow& flow, const drawing::Gauge& gauge, PenMode pens) {
    flow.heading("Icons in all frames");
    constexpr std::size_t kRow = 11;
    for (std::size_t first = 0; first < kIcons.size(); first += kRow) {
        for (const char* side : kSides) {
            for (std::size_t n = first; n < std::min(first + kRow, kIcons.size()); ++n) {
                const std::string caption = side == kSides.front() ? kIcons[n].name : "";
                addUnit(flow, std::string(side) + ' ' + kIcons[n].words, caption, {35, 16}, gauge, pens);
            }
            flow.endRow();
        }
    }
}

void addTyped(Flow& flow, const drawing::Gauge& gauge, PenMode pens) {
    flow.heading("Sizes");
    for (const char* size : {"tm", "sqd", "sec", "plt", "coy", "bn", "rgt", "bde", "div"}) {
        addUnit(flow, std::string("inf ") + size, size, {35, 20}, gauge, pens);
    }
    flow.heading("As they are typed");
    for (const char* words :
         {"1/2 inf sqd", "2/B inf plt (+)", "A/1/2 inf tm", "hq B/1-9 inf coy", "eny inf plt ?", "eny mech inf coy",
          "med sec", "mor sec of B", "neu MP sqd", "unk rec tm", "3/2 inf sqd (-) plan @260400Z",
          "abn inf coy >045 \"QRF\"", "tf 2 mech inf bn", "eny hq 4 arm coy", "1/2 inf sqd \"ATTACHED FROM 3 PLT\""}) {
        addUnit(flow, words, words, {64, 28}, gauge, pens);
    }
    flow.heading("Direction of movement, round the clock");
    for (int azimuth = 0; azimuth < 360; azimuth += 30) {
        const std::string words = "1/2 inf sqd >" + std::to_string(azimuth);
        addUnit(flow, words, '>' + std::to_string(azimuth), {38, 34}, gauge, pens);
    }
}

void addHeights(Flow& flow, const drawing::Gauge& gauge, PenMode pens) {
    flow.heading("Height 4, 6, 8 mm; pen 0.25, 0.40, 0.70");
    for (const double height : {4.0, 6.0, 8.0}) {
        for (const double pen : {0.25, 0.40, 0.70}) {
            drawing::Gauge own = gauge;
            own.symbol = height;
            own.pen = pen;
            addUnit(flow, "2/B mech inf plt", "mech inf", {43, 20}, own, pens);
        }
    }
    for (const double height : {4.0, 6.0, 8.0}) {
        for (const char* words : {"trn sec", "cbrn tm", "MP sqd"}) {
            drawing::Gauge own = gauge;
            own.symbol = height;
            addUnit(flow, words, words, {43, 20}, own, pens);
        }
    }
}

}  // namespace

void addUnits(Flow& flow, const drawing::Gauge& gauge, PenMode pens) {
    addFrames(flow, gauge, pens);
    addIcons(flow, gauge, pens);
    addTyped(flow, gauge, pens);
    addHeights(flow, gauge, pens);
}

}  // namespace crosstick::symbols
