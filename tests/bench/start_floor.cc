// The least that a start can cost: an empty window of a program that links the same libraries, makes one CRS and reads
// a sheet coarsely once. Tells when it has painted, and ends.
#include <QApplication>
#include <QPainter>
#include <QTimer>
#include <QWidget>

#include "core/geodesy/crs.h"
#include "core/sheets/raster.h"
#include "tests/bench/usable.h"

namespace {

class Empty final : public QWidget {
  protected:
    void paintEvent(QPaintEvent* /*event*/) override {
        QPainter(this).fillRect(rect(), Qt::gray);
        QTimer::singleShot(0, qApp, &crosstick::usable);
    }
};

}  // namespace

int main(int argc, char** argv) {
    QApplication application(argc, argv);
    Empty window;
    window.resize(1366, 768);
    window.show();
    const auto crs = crosstick::geodesy::describeCrs("EPSG:32625");
    const auto sheet = crosstick::sheets::Raster::open(argv[1]);
    if (!crs || !sheet || !sheet->read({0, 0, sheet->columns(), sheet->rows()}, 256, 256)) {
        return 1;
    }
    return QApplication::exec();
}
