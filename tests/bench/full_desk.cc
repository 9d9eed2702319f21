#include "tests/bench/full_desk.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <gdal_priv.h>

#include <QWindow>

#include "core/plan/edits.h"
#include "core/sheets/sheet_file.h"
#include "tests/sheets/our_reader.h"

namespace crosstick {
namespace {

constexpr int kSide = 20000;
constexpr std::size_t kFilms = 30;
constexpr std::size_t kMeasures = 10000;

/// A sheet with contours of a kind, so that tiles are neither empty nor all the same.
std::filesystem::path madeSheet(const std::filesystem::path& folder) {
    GDALAllRegister();
    const std::filesystem::path file = folder / "sheet.tif";
    char** options = nullptr;
    for (const char* option : {"TILED=YES", "BLOCKXSIZE=512", "BLOCKYSIZE=512", "COMPRESS=DEFLATE", "PREDICTOR=2"}) {
        options = CSLAddString(options, option);
    }
    GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
    GDALDataset* sheet = driver->Create(file.c_str(), kSide, kSide, 3, GDT_Byte, options);
    CSLDestroy(options);
    OGRSpatialReference reference;
    reference.importFromEPSG(32625);
    sheet->SetSpatialRef(&reference);
    std::array placement{kCorner.easting.value(), kMetresPerPixel, 0.0, kCorner.northing.value(), 0.0,
                         -kMetresPerPixel};
    sheet->SetGeoTransform(placement.data());
    std::vector<std::uint8_t> rows(static_cast<std::size_t>(kSide) * 3 * 512);
    for (int top = 0; top < kSide; top += 512) {
        const int high = std::min(512, kSide - top);
        for (int y = 0; y < high; ++y) {
            for (int x = 0; x < kSide; ++x) {
                const double height = std::sin(x / 410.0) * std::cos((top + y) / 530.0) * 90;
                const bool line = std::abs(height - std::round(height / 10) * 10) < 0.4;
                auto* pixel = &rows[(static_cast<std::size_t>(y) * kSide + static_cast<std::size_t>(x)) * 3];
                pixel[0] = line ? 150 : 240;
                pixel[1] = line ? 100 : static_cast<std::uint8_t>(225 + height / 10);
                pixel[2] = line ? 60 : 215;
            }
        }
        if (sheet->RasterIO(GF_Write, 0, top, kSide, high, rows.data(), kSide, high, GDT_Byte, 3, nullptr, 3,
                            GSpacing{3} * kSide, 1, nullptr) != CE_None) {
            std::abort();
        }
    }
    std::array levels{2, 4, 8, 16, 32};
    (void)sheet->BuildOverviews("AVERAGE", static_cast<int>(levels.size()), levels.data(), 0, nullptr, nullptr,
                                nullptr);
    GDALClose(sheet);
    return file;
}

plan::Measure measureOf(std::size_t n, const Uuid& id) {
    const double east = static_cast<double>(n % 100) * 400;
    const double north = static_cast<double>(n / 100) * 400;
    const auto at = [&](double right, double up) {
        return geodesy::PlanePoint{kCorner.easting + Metres(400 + east + right),
                                   kCorner.northing - Metres(400 + north + up)};
    };
    plan::Measure measure;
    measure.id = id;
    switch (n % 3) {
        case 0:
            measure.kind = "phase-line";
            measure.name = "P" + std::to_string(n);
            for (int step = 0; step < 20; ++step) {
                measure.points.push_back(at(step * 16, 40 * std::sin(step * 0.7)));
            }
            break;
        case 1:
            measure.kind = "assembly-area";
            measure.name = "Q" + std::to_string(n);
            measure.points = {at(20, 20), at(330, 60), at(300, 280), at(60, 250)};
            break;
        default:
            measure.kind = "checkpoint";
            measure.number = std::to_string(n);
            measure.points = {at(160, 160)};
    }
    return measure;
}

/// 30 films of 10,000 measures, and a route of 200 legs on the first.
plan::Plan manyMeasures(const plan::Sheet& sheet) {
    IdSource ids(5);
    plan::Heading heading;
    heading.name = "MANY";
    heading.date = CalendarDate{std::chrono::year(2027), std::chrono::month(3), std::chrono::day(13)};
    heading.plane = geodesy::Zone{25, geodesy::Hemisphere::North};
    heading.pace = plan::PaceProfile{62, "", {}};
    heading.rate = plan::MarchRate{KilometresPerHour(2), "", {}};
    plan::PlanBuilder builder{plan::Plan{}};
    builder.id(ids.next()).heading(heading).put(sheet);
    std::vector<plan::Film> films(kFilms);
    for (std::size_t n = 0; n < kMeasures; ++n) {
        plan::Measure measure = measureOf(n, ids.next());
        plan::Film& film = films[n % kFilms];
        film.shows.push_back(
            {measure.id, plan::orderBetween(film.shows.empty() ? "" : film.shows.back().order, ""), {}, {}});
        builder.put(std::move(measure));
    }
    for (std::size_t f = 0; f < kFilms; ++f) {
        films[f].id = ids.next();
        films[f].name = "FILM " + std::to_string(f + 1);
        builder.put(std::move(films[f]));
    }
    return std::move(builder).build();
}

/// A route of 200 legs through the middle of the sheet, on the lowest film.
plan::Plan withLongRoute(const plan::Plan& plan, const plan::ItemId& id) {
    plan::Route route;
    route.id = id;
    route.name = "LONG";
    std::vector<plan::Measure> stops;
    IdSource ids(7);
    for (std::size_t n = 0; n <= 200; ++n) {
        const double turn = static_cast<double>(n) * 0.31;
        route.vertices.push_back({kCorner.easting + Metres(18000 + 22.0 * static_cast<double>(n)),
                                  kCorner.northing - Metres(20000 + 500 * std::sin(turn))});
        plan::Measure stop;
        stop.id = ids.next();
        stop.kind = "checkpoint";
        stop.number = "R" + std::to_string(n);
        stop.points = {route.vertices.back()};
        route.stops.push_back({n, stop.id});
        stops.push_back(std::move(stop));
    }
    return plan::withRoute(plan, std::move(route), std::move(stops), plan.films().front()->id);
}

/// The same films, six in each of five phases.
plan::Plan inPhases(const plan::Plan& plan) {
    constexpr int kPhases = 5;
    plan::PlanBuilder builder{plan};
    std::vector<plan::Phase> phases(kPhases);
    for (int n = 1; n <= kPhases; ++n) {
        phases[static_cast<std::size_t>(n) - 1].number = n;
        phases[static_cast<std::size_t>(n) - 1].name = "PHASE " + std::to_string(n);
    }
    builder.phases(std::move(phases));
    int n = 0;
    for (const plan::FilmPtr& film : plan.films()) {
        plan::Film changed = *film;
        changed.phases = {1 + n++ % kPhases};
        builder.put(std::move(changed));
    }
    return std::move(builder).build();
}

}  // namespace

void waitForExposed(QWidget& widget) {
    while (!widget.windowHandle()->isExposed()) {
        QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    }
}

Desk::Desk() {
    auto sheet = sheets::describeSheet(testing::reader(), madeSheet(folder_.path().toStdString()), Uuid{{9}},
                                       {Scale{25000}, {}});
    if (!sheet) {
        std::abort();
    }
    work_ = std::make_unique<work::Work>(work::WorkOrder{
        places::share(), std::filesystem::path(folder_.path().toStdString()) / "state", testing::reader(), 3});
    table_ = std::make_unique<table::LightTable>(*work_, &faces_, places::share());
    ledger_ = std::make_unique<ledger::Ledger>(*work_, [](const Error&) { return QString(); });
    table_->resize(kWidth, kHeight);
    ledger_->resize(kWidth, ledger::Ledger::kHeight);
    table_->QWidget::show();  // LightTable has a show() of its own
    ledger_->show();
    waitForExposed(*table_);
    plan_ = withLongRoute(manyMeasures(*sheet), route_);
    layAll();
}

void Desk::layPhases() {
    work_->begin(inPhases(plan_), folder_.path().toStdString());
    settle();
}

}  // namespace crosstick
