// The command specimen, through the door that the program itself uses.
#include <filesystem>
#include <fstream>
#include <iterator>

#include <gtest/gtest.h>

#include "core/measures/catalogue.h"
#include "tests/app/asking.h"
#include "tests/files/temporary_folder.h"

namespace crosstick::app {
namespace {

std::string bytesOf(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

class SpecimenCommand : public ::testing::Test {
  protected:
    crosstick::testing::TemporaryFolder folder_;
    std::string path(const char* name) { return (folder_ / name).string(); }
};

TEST_F(SpecimenCommand, WritesTheSamePdfTwice) {
    EXPECT_EQ(said({"specimen", "-o", path("a.pdf")}).exit, Exit::Done);
    EXPECT_EQ(said({"specimen", "-o", path("b.pdf")}).exit, Exit::Done);
    EXPECT_TRUE(bytesOf(folder_ / "a.pdf").starts_with("%PDF-"));
    EXPECT_EQ(bytesOf(folder_ / "a.pdf"), bytesOf(folder_ / "b.pdf"));
}

TEST_F(SpecimenCommand, WritesAPictureOfTrueSize) {
    EXPECT_EQ(said({"specimen", "-o", path("a.svg"), "--one-pen"}).exit, Exit::Done);
    const std::string svg = bytesOf(folder_ / "a.svg");
    EXPECT_NE(svg.find("<svg width=\"420mm\""), std::string::npos) << svg.substr(0, 300);
    EXPECT_EQ(svg.find("<text"), std::string::npos) << "letters are outlines";
}

TEST_F(SpecimenCommand, WritesAPictureOfEachMeasure) {
    std::filesystem::create_directory(folder_ / "pictures");
    EXPECT_EQ(said({"specimen", "-o", path("a.pdf"), "--pictures", path("pictures")}).exit, Exit::Done);
    for (const measures::Entry& entry : measures::catalogue()) {
        EXPECT_TRUE(std::filesystem::exists(folder_ / "pictures" / (std::string(entry.kind) + ".svg"))) << entry.kind;
    }
}

TEST_F(SpecimenCommand, RefusesOtherFormsAndMissingFoldersInOneLine) {
    const Said form = said({"specimen", "-o", path("a.png")});
    EXPECT_EQ(form.exit, Exit::CouldNot);
    EXPECT_NE(form.err.find(".pdf or .svg"), std::string::npos) << form.err;
    const Said folder = said({"specimen", "-o", path("a.pdf"), "--pictures", path("none")});
    EXPECT_EQ(folder.exit, Exit::CouldNot);
    EXPECT_EQ(std::count(folder.err.begin(), folder.err.end(), '\n'), 1) << folder.err;
    EXPECT_EQ(said({"specimen", "-o", path("a.pdf"), "--symbol", "9"}).exit, Exit::WrongUse);
}

}  // namespace
}  // namespace crosstick::app
