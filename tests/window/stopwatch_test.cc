// The whole job against the count: from a picture that says nothing of itself to six sets of films and cards, by clicks
// on the table and words typed, each counted. What the hand does between clicks (pointing, two fingers that move or
// zoom) is not.
#include <fstream>
#include <iostream>
#include <iterator>

#include <QDialog>
#include <QFileDialog>
#include <QPushButton>
#include <QSpinBox>
#include <QTableView>
#include <QTimer>
#include <QToolButton>

#include <gdal_priv.h>

#include "sample-data/demo.h"
#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

/// Short metres as the demo's lists have them: 54270 98060, and 55060 100640 north of the line 5100.
geodesy::PlanePoint on(double east, double north) {
    return {Metres(600000 + east), Metres(5000000 + north)};
}
using Places = std::vector<geodesy::PlanePoint>;

class Stopwatch : public TheWindow {
  protected:
    int clicks = 0, entries = 0;
    std::vector<std::pair<std::string, int>> laps;
    QByteArray path = qgetenv("PATH");

    void SetUp() override {
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        layPrinter();
        makePicture();
    }
    void TearDown() override {
        qputenv("PATH", path);
        int before = 0;
        for (const auto& [what, after] : laps) {
            std::cout << "  " << what << ": " << after - before << '\n';
            before = after;
        }
        std::cout << "  together: " << clicks << " clicks, " << entries << " entries, " << clicks + entries << '\n';
        TheWindow::TearDown();
    }
    void lap(const char* what) {
        rest();
        settle();
        laps.emplace_back(what, clicks + entries);
        if (const char* shown = std::getenv("CROSSTICK_SHOW")) {
            window->grab().save(QStringLiteral("%1/%2-%3.png").arg(shown).arg(laps.size()).arg(what));
        }
    }

    // What is there: the demo's sheet as a scanner gives it, and a printer that keeps what it is given.
    [[nodiscard]] std::string picture() const { return folder / "scan.png"; }
    void makePicture() {
        demo::DemoOrder order;
        order.folder = folder / "demo";
        order.share = places::share();
        order.progress = [](std::string_view) {};
        order.reader = reader;
        const auto made = demo::makeDemo(order);
        ASSERT_TRUE(made) << app::words(made.error());
        GDALAllRegister();
        const std::unique_ptr<GDALDataset> sheet(
            GDALDataset::Open((folder / "demo" / "sheet.tif").c_str(), GDAL_OF_RASTER));
        ASSERT_TRUE(sheet);
        GDALDriver* png = GetGDALDriverManager()->GetDriverByName("PNG");
        const std::unique_ptr<GDALDataset> copy(
            png->CreateCopy(picture().c_str(), sheet.get(), FALSE, nullptr, nullptr, nullptr));
        ASSERT_TRUE(copy);
        std::filesystem::remove(picture() + ".aux.xml");
    }
    void layPrinter() {
        const std::filesystem::path bin = folder / "bin";
        std::filesystem::create_directory(bin);
        std::ofstream(bin / "lpstat") << "#!/bin/sh\necho office\n";
        std::ofstream(bin / "lp") << "#!/bin/sh\ncd " << folder / ""
                                  << "\necho \"$@\" >> told\nn=$(wc -l < told)\ncat > given-$n.pdf\n";
        for (const char* one : {"lp", "lpstat"}) {
            std::filesystem::permissions(bin / one, std::filesystem::perms::owner_all);
        }
        qputenv("PATH", QByteArray::fromStdString(bin.string()) + ':' + path);
    }

    // The hands.
    [[nodiscard]] QWidget* inFocus() {
        QWidget* at = QApplication::focusWidget();
        return at != nullptr ? at : window.get();
    }
    void pressed(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) {
        ++entries;
        QTest::keyClick(inFocus(), key, with);
    }
    /// By its shortcut, from wherever the caret stands.
    void shortcut(const std::string& action) {
        ++entries;
        const QKeyCombination keys = window->actionsByName().at(action)->shortcut()[0];
        QTest::keyClick(inFocus(), keys.key(), keys.keyboardModifiers());
    }
    /// Words and Enter: one entry.
    void typed(const char* words) {
        ++entries;
        for (const QChar letter : QString::fromUtf8(words)) {
            QTest::keyClicks(inFocus(), QString(letter));
        }
        QTest::keyClick(inFocus(), Qt::Key_Return);
        QTest::qWait(1);
    }
    /// Grids typed in one line count one each.
    void typedGrids(const char* words, int grids) {
        typed(words);
        entries += grids - 1;
    }
    void clicked(geodesy::PlanePoint place, Qt::KeyboardModifiers with = Qt::NoModifier) {
        ++clicks;
        QTest::mouseMove(&window->table(), spot(place));
        QTest::mouseClick(&window->table(), Qt::LeftButton, with, spot(place));
    }
    void clicked(const Places& places) {
        for (const geodesy::PlanePoint place : places) {
            clicked(place);
        }
    }
    void clickedOn(QWidget* button) {
        ASSERT_TRUE(button);
        ASSERT_TRUE(button->isVisible() && button->isEnabled());
        ++clicks;
        QTest::mouseClick(button, Qt::LeftButton);
    }
    template <class Button>
    [[nodiscard]] Button* named(QWidget& in, const char* words) {
        for (Button* button : in.findChildren<Button*>()) {
            if (button->text().startsWith(QString::fromUtf8(words)) && button->isVisible()) {
                return button;
            }
        }
        return nullptr;
    }
    /// The file dialog that an action opens: its name is typed.
    void fileNamed(const std::string& action, const std::string& file) {
        QTimer::singleShot(300, [this, file] {
            auto* dialog = qobject_cast<QFileDialog*>(QApplication::activeModalWidget());
            ASSERT_TRUE(dialog);
            auto* name = dialog->findChild<QLineEdit*>();
            name->selectAll();
            QTest::keyClicks(name, QString::fromStdString(file));
            QTest::keyClick(name, Qt::Key_Return);
            ++entries;
        });
        shortcut(action);
        window->activateWindow();  // as a desk does when a dialog has gone
        EXPECT_TRUE(QTest::qWaitForWindowActive(window.get()));
        rest();
    }
    /// Two fingers: so near that a pixel is so many metres.
    void look(geodesy::PlanePoint middle, double metresPerPixel) {
        window->table().setView(table::View(window->table().view().area(), middle, table::Zoom(1 / metresPerPixel)));
        settle();
    }

    // Steps of the job.
    void registerPicture();
    void higherAndGround();
    void routes();
};

void Stopwatch::higherAndGround() {
    look(on(54500, 98600), 4);
    shortcut("new-phase");
    typed("Approach");
    lap("phase");
    clicked(Places{on(53000, 98600), on(53500, 98700), on(54000, 98800)});
    lap("nothing");
}

void Stopwatch::registerPicture() {
    fileNamed("register", picture());
    registering::RegisterPage& page = window->registerPage();
    const auto ready = [&] {
        EXPECT_TRUE(QTest::qWaitFor([&] { return !page.isReading() && window->work().errands().isIdle(); }, 30000));
        QTest::qWait(1);
        rest();
    };
    ready();
    const auto mark = [&](double east, double north, const char* printed) {
        const registration::PixelPoint at{(48125 - east) / -2.1166666667, (106000 - north) / 2.1166666667};
        ++clicks;
        QTest::mouseClick(&page.canvas(), Qt::LeftButton, {}, page.canvas().spotOf({at.x + 3, at.y - 2}).toPoint());
        ready();
        typed(printed);
        ready();
    };
    mark(50000, 97000, "25T FL 50 97");
    mark(58000, 104000, "58 04");
    typed("");  // the proposed third
    ready();
    clickedOn(named<QPushButton>(page, "Find"));
    ready();
    lap("marks");
    QLineEdit* scale = nullptr;
    for (QLineEdit* field : page.findChildren<QLineEdit*>()) {
        scale = field->accessibleName() == QStringLiteral("The number under the 1 of its scale") ? field : scale;
    }
    ASSERT_TRUE(scale);
    clickedOn(scale);
    typed("25000");
    clickedOn(named<QPushButton>(page, "Lay"));
    rest();
    ASSERT_TRUE(window->work().isOpen()) << page.refusal().toStdString();
    lap("laid");
}

TEST_F(Stopwatch, FromAPictureToSixSetsOfFilmsAndCardsWithinAHundredAndFiftyClicksAndEntries) {
    registerPicture();
    higherAndGround();
    EXPECT_LE(clicks + entries, 150);
}

}  // namespace
}  // namespace crosstick::window
