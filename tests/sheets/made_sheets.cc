#include "tests/sheets/made_sheets.h"

#include <cstdlib>
#include <fstream>

#include <cpl_string.h>
#include <gdal_frmts.h>
#include <gdal_priv.h>
#include <ogr_spatialref.h>

namespace crosstick::testing {
namespace {

GDALDataType typeOf(Depth depth) {
    switch (depth) {
        case Depth::Byte:
            return GDT_Byte;
        case Depth::UInt16:
            return GDT_UInt16;
        case Depth::Int16:
            return GDT_Int16;
        case Depth::Float:
            return GDT_Float32;
    }
    return GDT_Byte;
}

}  // namespace

Folder::Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "crosstick-sheets-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) {
        std::abort();
    }
    path_ = name;
}

Folder::~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

void makeSheet(const std::filesystem::path& file, const Recipe& recipe) {
    GDALRegister_GTiff();
    CPLStringList options;
    for (const std::string& option : recipe.options) {
        options.AddString(option.c_str());
    }
    GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
    GDALDataset* made =
        driver->Create(file.c_str(), recipe.columns, recipe.rows, recipe.bands, typeOf(recipe.depth), options.List());
    if (!recipe.crs.empty()) {
        OGRSpatialReference reference;
        reference.SetFromUserInput(recipe.crs.c_str());
        made->SetSpatialRef(&reference);
    }
    std::array<double, 6> placement = recipe.placement;
    if (placement[1] != 0) {
        made->SetGeoTransform(placement.data());
    }
    if (recipe.depth == Depth::Int16 || recipe.depth == Depth::Float) {
        made->GetRasterBand(1)->SetUnitType(recipe.heightUnit.c_str());
    }
    if (recipe.touch) {
        recipe.touch(*made);
    }
    std::vector<double> line(static_cast<std::size_t>(recipe.columns));
    for (int band = 1; recipe.value && band <= recipe.bands; ++band) {
        for (int row = 0; row < recipe.rows; ++row) {
            for (int column = 0; column < recipe.columns; ++column) {
                line[static_cast<std::size_t>(column)] = recipe.value(column, row, band);
            }
            if (made->GetRasterBand(band)->RasterIO(GF_Write, 0, row, recipe.columns, 1, line.data(), recipe.columns, 1,
                                                    GDT_Float64, 0, 0, nullptr) != CE_None) {
                std::abort();
            }
        }
    }
    GDALClose(GDALDataset::ToHandle(made));
}

void writeText(const std::filesystem::path& file, const std::string& text) {
    std::ofstream(file, std::ios::binary) << text;
}

}  // namespace crosstick::testing
