// The whole job against the count: from a picture that says nothing of itself to six sets of films and cards, by clicks
// on the table and words typed, each counted. What the hand does between clicks (pointing, two fingers that move or
// zoom) is not.
#include <fstream>
#include <iostream>
#include <iterator>
#include <map>

#include <gdal_priv.h>

#include <QDialog>
#include <QFileDialog>
#include <QPushButton>
#include <QSpinBox>
#include <QTableView>
#include <QTimer>
#include <QToolButton>

#include "core/geodesy/plane_angles.h"
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
    /// A word in the ledger's strip.
    void clickedCell(const char* words) {
        auto* cells = ledger().findChild<QTableView*>();
        for (int column = 0; column < cells->model()->columnCount(); ++column) {
            const QModelIndex cell = cells->model()->index(cells->model()->rowCount() - 1, column);
            if (cell.data().toString() == QString::fromUtf8(words)) {
                ++clicks;
                cells->scrollTo(cell);
                QTest::mouseClick(cells->viewport(), Qt::LeftButton, {}, cells->visualRect(cell).center());
                return;
            }
        }
        ADD_FAILURE() << words;
    }
    template <class Button>
    [[nodiscard]] Button* named(QWidget& in, const char* words) {
        for (Button* button : in.findChildren<Button*>()) {
            const QString said = button->accessibleName().isEmpty() ? button->text() : button->accessibleName();
            if (said.startsWith(QString::fromUtf8(words)) && button->isVisible()) {
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

    /// What is printed between clicks, and what it is.
    void followed(const Places& places, const char* words) {
        shortcut("follow");
        for (const geodesy::PlanePoint place : places) {
            clicked(place);
            rest();
        }
        pressed(Qt::Key_Return);
        typed(words);
    }

    /// A stroke with the pen from click to click, and what it is.
    void penned(const Places& places, const char* words) {
        shortcut("freehand");
        clicked(places.front());
        for (std::size_t n = 1; n < places.size(); ++n) {
            for (int step = 1; step <= 12; ++step) {
                const double part = step / 12.0;
                const Metres east = places[n - 1].easting + part * (places[n].easting - places[n - 1].easting);
                const Metres north = places[n - 1].northing + part * (places[n].northing - places[n - 1].northing);
                QTest::mouseMove(&window->table(), spot({east, north}));
            }
        }
        clicked(places.back());
        typed(words);
    }

    // Steps of the job.
    void registerPicture();
    void higherAndGround();
    void routes();
    void points();
    void column();
    void nextPhase();
    void papers();
    void expectTheJobIsDone();
};

/// Higher's lines: two boundaries by hand, two lines along what is printed, one over the hills; two areas with the pen.
void Stopwatch::higherAndGround() {
    shortcut("name-film");
    typed("MOVE");
    look(on(55000, 100500), 9);
    typed("bdy A 2/C");
    clicked({on(53050, 97000), on(53100, 97430), on(53200, 98400), on(53400, 99200), on(53700, 99900),
             on(53860, 100800), on(53950, 101600), on(54000, 102600), on(54600, 103100), on(55200, 103700)});
    pressed(Qt::Key_Return);
    penned({on(55400, 96800), on(55500, 97600), on(55980, 98300), on(56180, 99100), on(56750, 99900), on(56840, 100120),
            on(57100, 100750), on(57500, 101700), on(57580, 101800), on(57900, 102200), on(58200, 102800)},
           "bdy 2/C 3/C");
    lap("boundaries");
    look(on(54600, 98600), 4);
    followed({on(53200, 98400), on(55980, 98300)}, "ld trivet");
    look(on(55000, 99900), 4);
    followed({on(53720, 99905), on(55400, 100083), on(55820, 100200)}, "pl bodkin");
    look(on(55600, 102000), 4);
    typed("pl ladle");
    clicked({on(54000, 102600), on(54700, 102250), on(55420, 102000), on(56050, 101720), on(56600, 101550),
             on(57200, 101800), on(57580, 101800)});
    pressed(Qt::Key_Return);
    lap("lines");
    look(on(56600, 102600), 3);
    penned({on(56880, 102900), on(56900, 103140), on(57060, 103200), on(57240, 103160), on(57260, 102940),
            on(57120, 102860), on(56900, 102890)},
           "obj cobnut");
    look(on(54000, 97900), 3);
    penned({on(53720, 97700), on(53720, 98020), on(53940, 98100), on(54200, 97980), on(54300, 97780), on(54220, 97560),
            on(53960, 97460), on(53730, 97680)},
           "aa hassock");
    lap("areas");
}

/// Both routes: the alternate leaves the primary at checkpoint 1 and comes back to its end.
void Stopwatch::routes() {
    look(on(55400, 100200), 8);
    shortcut("route");
    clicked(on(54270, 98060));
    clicked(on(54330, 98520), Qt::ShiftModifier);
    clicked({on(54470, 99120), on(54730, 99720), on(55060, 100640)});
    clicked(on(55200, 100860), Qt::ShiftModifier);
    clicked(on(55200, 101120), Qt::ShiftModifier);
    clicked(on(55400, 101860));
    clicked(on(55560, 102060), Qt::ShiftModifier);
    clicked({on(56100, 102140), on(56400, 102400)});
    pressed(Qt::Key_Return);
    typed("quill");
    lap("primary");
    shortcut("alternate");
    clicked(on(54270, 98060));
    clicked(on(54330, 98520), Qt::ShiftModifier);
    clicked({on(54470, 99120), on(55660, 99530)});
    clicked(on(55980, 99950), Qt::ShiftModifier);
    clicked({on(56300, 100300), on(56800, 101050), on(56950, 101900)});
    clicked(on(56720, 102160), Qt::ShiftModifier);
    clicked(on(56400, 102400));
    pressed(Qt::Key_Return);
    typed("mitten");
    lap("alternate");
    clickedCell("no count");
    for (const char* word : {"74", "1.6", "132100ZMAR27"}) {
        typed(word);
    }
    pressed(Qt::Key_Escape);
    lap("figures");
    look(on(55500, 99300), 5);
    shortcut("handrail");
    clicked(on(55980, 98300));
    rest();
    clicked(on(55620, 100500));
    rest();
    pressed(Qt::Key_Return);
    typed("free");
    lap("handrail");
}

void Stopwatch::points() {
    look(on(55500, 101000), 7);
    typed("orp sorrel 5670 0268");
    typed("rly 5464 9976");
    typed("5546 0170");
    typed("ccp 5689 0246");
    pressed(Qt::Key_Escape);
    lap("points");
    for (const auto& [point, thing, words] : {std::tuple(on(54470, 99120), on(54530, 99120), "spur track"),
                                              std::tuple(on(55060, 100640), on(55055, 100660), "weir"),
                                              std::tuple(on(55660, 99530), on(55480, 99530), "Road B")}) {
        look(point, 3);
        clicked(point);
        shortcut("tie");
        clicked(thing);
        typed(words);
    }
    lap("ties");
}

void Stopwatch::column() {
    look(on(54000, 100500), 8);
    shortcut("ticks");  // before anything lies on the film's paper
    typed("order of march");
    clicked(on(52500, 103500));
    clickedOn(named<QLineEdit>(*window, "Elements in one line"));
    typed("1/2/C inf sqd 9, hq 2/C inf plt 3, WPN/2/C inf sqd 8, 2/2/C inf sqd 9, HQ rear 2, 3/2/C inf sqd 9");
    entries += 5;  // six elements
    lap("column");
}

/// The next phase from this one, and what it adds.
void Stopwatch::nextPhase() {
    shortcut("next-phase");
    typed("Look");
    rest();
    look(on(56900, 102800), 2.5);
    window->table().setFocus();
    typed("op 5612 0310");
    penned({on(57040, 103240), on(57180, 103240), on(57180, 103380), on(57040, 103380), on(57050, 103260)}, "nai");
    typed("sbf");
    clicked({on(57120, 102560), on(57280, 102600), on(56990, 102944), on(57309, 102986)});
    penned({on(56660, 102930), on(56680, 103040), on(56780, 103080), on(56800, 102920), on(56680, 102925)},
           "aslt wicker");
    lap("next phase");
}

void Stopwatch::papers() {
    shortcut("plan-card");
    typed("SLOW KETTLE");
    typed("EXERCISE");
    lap("marked");
    fileNamed("save", folder / "kettle.gpkg");
    shortcut("copies");
    ASSERT_TRUE(QTest::qWaitFor([this] { return window->copies().isReady(); }, 30000));
    rest();
    clickedOn(window->copies().findChild<QSpinBox*>()->findChild<QLineEdit*>());
    typed("6");
    clickedOn(named<QPushButton>(window->copies(), "Print"));
    rest();
    lap("printed");
}

void Stopwatch::expectTheJobIsDone() {
    const auto kinds = [&](const char* kind) {
        int count = 0;
        plan().measures().forEach([&](const plan::MeasurePtr& one) { count += one->kind == kind; });
        return count;
    };
    for (const auto& [kind, count] : std::map<const char*, int>{{"boundary", 2},
                                                                {"line-of-departure", 1},
                                                                {"phase-line", 2},
                                                                {"objective", 1},
                                                                {"assembly-area", 1},
                                                                {"start-point", 1},
                                                                {"checkpoint", 9},
                                                                {"release-point", 1},
                                                                {"objective-rally-point", 1},
                                                                {"rally-point", 2},
                                                                {"casualty-collection-point", 1},
                                                                {"order-of-march", 1},
                                                                {"observation-post", 1},
                                                                {"named-area-of-interest", 1},
                                                                {"support-by-fire", 1},
                                                                {"assault-position", 1},
                                                                {"free-line", 1}}) {
        EXPECT_EQ(kinds(kind), count) << kind;
    }
    EXPECT_EQ(plan().films().size(), 2U);
    ASSERT_EQ(plan().routes().size(), 2U);
    EXPECT_EQ(plan().heading().name, "SLOW KETTLE");
    EXPECT_EQ(plan().heading().marking, "EXERCISE");
    int ties = 0;
    plan().measures().forEach([&](const plan::MeasurePtr& one) { ties += one->tie.empty() ? 0 : 1; });
    EXPECT_EQ(ties, 3);
    // The registered picture gives the places that the demo's own sheet has, to a pixel of the table.
    const plan::RoutePtr quill = plan().routeNamed("QUILL");
    ASSERT_TRUE(quill);
    ASSERT_EQ(quill->vertices.size(), 11U);
    EXPECT_LT(geodesy::planeDistance(quill->vertices.back(), on(56400, 102400)), Metres(8));
    std::ifstream in(folder / "told");
    const std::string told{std::istreambuf_iterator<char>(in), {}};
    EXPECT_EQ(told,
              "-d office -t SLOW KETTLE films -o print-scaling=none -n 6 -o collate=true -\n"
              "-d office -t SLOW KETTLE route cards -o print-scaling=none -n 6 -o collate=true -\n");
    EXPECT_GT(std::filesystem::file_size(folder / "given-1.pdf"), 20000U);
    EXPECT_GT(std::filesystem::file_size(folder / "given-2.pdf"), 10000U);
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
    clickedOn(named<QPushButton>(page, "Lay"));
    typed("25000");  // all that was missing
    rest();
    ASSERT_TRUE(window->work().isOpen()) << page.refusal().toStdString();
    lap("laid");
}

TEST_F(Stopwatch, FromAPictureToSixSetsOfFilmsAndCardsWithinAHundredAndFiftyClicksAndEntries) {
    registerPicture();
    higherAndGround();
    routes();
    points();
    column();
    nextPhase();
    papers();
    EXPECT_LE(clicks + entries, 150);
    expectTheJobIsDone();
}

}  // namespace
}  // namespace crosstick::window
