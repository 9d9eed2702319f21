#pragma once

#include <filesystem>
#include <memory>

#include <QCoreApplication>
#include <QTemporaryDir>
#include <QThread>

#include "tests/places.h"
#include "ui/ledger/ledger.h"
#include "ui/table/light_table.h"

namespace crosstick {

constexpr double kMetresPerPixel = 25000 * 25.4e-3 / 300;  // 300 dpi at 1:25,000
constexpr int kWidth = 1920;
constexpr int kHeight = 1080;
inline const geodesy::PlanePoint kCorner{Metres(640000), Metres(5140000)};

/// Waits: before a window is seen its painting is passed over.
void waitForExposed(QWidget& widget);

/// The table shown and settled, on it a sheet of 20,000 x 20,000 pixels under 30 films of 10,000 measures and a route
/// of 200 legs.
class Desk {
  public:
    Desk();
    [[nodiscard]] table::LightTable& table() { return *table_; }
    [[nodiscard]] ledger::Ledger& ledger() { return *ledger_; }
    [[nodiscard]] work::Work& work() { return *work_; }
    [[nodiscard]] plan::ItemId route() const { return route_; }
    /// Every film on the table again, as at the start.
    void layAll() {
        work_->begin(plan_, folder_.path().toStdString());
        settle();
    }
    void layPhases();  ///< six films in each of five phases
    void settle() {
        do {
            QCoreApplication::processEvents(QEventLoop::AllEvents, 20);
            QThread::msleep(1);
        } while (!table_->isSettled());
    }
    [[nodiscard]] table::View viewAt(double zoom) const {
        return {table_->view().area(),
                {kCorner.easting + Metres(20000), kCorner.northing - Metres(20000)},
                table::Zoom(zoom)};
    }

  private:
    QTemporaryDir folder_;
    plan::ItemId route_ = Uuid{{8}};
    plan::Plan plan_;
    std::unique_ptr<work::Work> work_;
    press::Faces faces_ = press::Faces::open(places::share() / "faces").value();
    std::unique_ptr<table::LightTable> table_;
    std::unique_ptr<ledger::Ledger> ledger_;
};

}  // namespace crosstick
