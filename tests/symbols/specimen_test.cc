// The specimen shows all there is, on its pages, the same each time.
#include "symbols/specimen/specimen.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "tests/symbols/ink.h"

namespace crosstick::symbols {
namespace {

using drawing::Box;

std::vector<std::string> written(const std::vector<SpecimenPage>& pages) {
    std::vector<std::string> all;
    for (const SpecimenPage& page : pages) {
        for (const drawing::Text& text : testing::texts(page.drawing)) {
            all.push_back(text.text);
        }
    }
    return all;
}

TEST(Specimen, ShowsEveryMeasureWithItsCodeOrSaysThatThereIsNone) {
    const auto words = written(specimen({}, PenMode::Colour));
    const auto has = [&](const auto& test) { return std::any_of(words.begin(), words.end(), test); };
    for (const measures::Entry& entry : measures::catalogue()) {
        EXPECT_TRUE(has([&](const std::string& text) { return text == entry.name; })) << entry.kind;
        if (!entry.code.entity.empty()) {
            EXPECT_TRUE(has([&](const std::string& text) { return text.starts_with(entry.code.entity); }))
                << entry.kind;
        }
    }
}

TEST(Specimen, ShowsWhatEveryQuestionOfAMeasureChanges) {
    const auto words = written(specimen({}, PenMode::Colour));
    int questions = 0;
    for (const measures::Entry& entry : measures::catalogue()) {
        for (const measures::Field& field : entry.fields) {
            if (field.type == measures::FieldType::Answer) {
                ++questions;
                EXPECT_TRUE(std::find(words.begin(), words.end(), std::string(field.label) + ": yes") != words.end())
                    << entry.kind << ' ' << field.key;
            }
        }
    }
    EXPECT_GE(questions, 4);
}

TEST(Specimen, SaysThatCodesAreFromMemoryOnEveryPage) {
    for (const SpecimenPage& page : specimen({}, PenMode::Colour)) {
        const auto texts = testing::texts(page.drawing);
        EXPECT_TRUE(std::any_of(texts.begin(), texts.end(), [](const drawing::Text& text) {
            return text.text.find("FROM MEMORY") != std::string::npos;
        })) << page.title;
    }
}

TEST(Specimen, StaysOnItsPagesForEveryGauge) {
    for (const drawing::Gauge gauge : {drawing::Gauge{}, drawing::Gauge{.symbol = 4, .pen = 0.25, .letters = 1.8},
                                       drawing::Gauge{.symbol = 8, .pen = 0.7, .letters = 3}}) {
        for (const SpecimenPage& page : specimen(gauge, PenMode::OnePen)) {
            const Box box = drawing::extent(page.drawing);
            EXPECT_TRUE(kSpecimenPaper.grown(-5).contains(box)) << page.title << ' ' << gauge.symbol;
            for (const drawing::Text& text : testing::texts(page.drawing)) {
                EXPECT_GE(text.capHeight, 1.8 - 1e-9) << text.text;
            }
        }
    }
}

TEST(Specimen, IsTheSameEachTime) {
    const auto once = specimen({}, PenMode::Colour);
    const auto again = specimen({}, PenMode::Colour);
    ASSERT_EQ(once.size(), again.size());
    for (std::size_t n = 0; n < once.size(); ++n) {
        EXPECT_EQ(once[n].drawing, again[n].drawing) << once[n].title;
    }
}

// What is drawn in a room of its own says what it is: no sample of the catalogue is empty.
TEST(Token, EveryMeasureHasAPictureInsideItsRoom) {
    constexpr Box kRoom{2, 3, 14, 15};
    for (const measures::Entry& entry : measures::catalogue()) {
        const drawing::Drawing token = tokenOf(entry, kRoom, {});
        EXPECT_FALSE(token.isEmpty()) << entry.kind;
        const Box box = drawing::extent(token);
        EXPECT_TRUE(kRoom.grown(0.9).contains(box))
            << entry.kind << ' ' << box.left << ' ' << box.top << ' ' << box.right << ' ' << box.bottom;
        EXPECT_GT(std::max(box.width(), box.height()), 2) << entry.kind;
    }
}

}  // namespace
}  // namespace crosstick::symbols
