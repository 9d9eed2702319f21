// Another language: every word of the window goes through the translator, and has room where it grows by a third.
#include <QAbstractButton>
#include <QComboBox>
#include <QHeaderView>
#include <QMenu>
#include <QMenuBar>
#include <QRegularExpression>
#include <QTableView>
#include <QTranslator>

#include "tests/window/the_window.h"
#include "ui/table/hand_words.h"

namespace crosstick::window {
namespace {

/// A language that nobody speaks: vowels have accents, and each text is longer by three tenths. A text with a bare
/// vowel in small letters did not come through here. (Names of a plan are written in capitals in these tests.)
class Accented final : public QTranslator {
  public:
    [[nodiscard]] bool isEmpty() const override { return false; }
    [[nodiscard]] QString translate(const char* /*context*/, const char* source, const char* /*remark*/,
                                    int /*count*/) const override {
        static const QString kBare = QStringLiteral("aeiou");
        static const QString kAccented = QStringLiteral("\u00e1\u00e9\u00ed\u00f3\u00fa");
        QString words = QString::fromUtf8(source);
        const auto longer = static_cast<int>(std::ceil(0.3 * static_cast<double>(words.size())));
        for (QChar& letter : words) {
            const auto at = kBare.indexOf(letter);
            letter = at < 0 ? letter : kAccented[at];
        }
        return words + QString(longer, QChar(0x00ed));
    }
};

bool isForeign(const QString& words) {
    static const QRegularExpression kBare(QStringLiteral("[aeiou]"));
    return !words.contains(kBare);
}

/// What papers say as they say it, names of the plan and of files.
bool isOfPaper(const QString& words) {
    static const QRegularExpression kPaper(
        QStringLiteral("^grid to magnetic: |^RTE [A-Z]+, card \\d+ of \\d+$|^inf sqd$|/[^ ]*\\.ini"));
    return words.contains(kPaper);
}

class OtherLanguage : public TheWindow {
  protected:
    Accented language;
    void SetUp() override {
        window.reset();
        QCoreApplication::installTranslator(&language);
        window = fresh();
    }
    void TearDown() override {
        window.reset();
        QCoreApplication::removeTranslator(&language);
        TheWindow::TearDown();
    }
    static std::string named(const QWidget& part) {
        return std::string(part.metaObject()->className()) + " \"" + part.accessibleName().toStdString() + "\"";
    }
    /// All words of a control that is seen.
    static QStringList wordsOf(const QWidget& part) {
        QStringList words{part.toolTip(), part.accessibleName(), part.accessibleDescription()};
        if (const auto* label = qobject_cast<const QLabel*>(&part)) {
            words << label->text();
        } else if (const auto* button = qobject_cast<const QAbstractButton*>(&part)) {
            words << button->text();
        } else if (const auto* field = qobject_cast<const QLineEdit*>(&part)) {
            words << field->placeholderText();
        } else if (const auto* box = qobject_cast<const QComboBox*>(&part)) {
            for (int n = 0; n < box->count(); ++n) {
                words << box->itemText(n);
            }
        } else if (const auto* header = qobject_cast<const QHeaderView*>(&part)) {
            for (int n = 0; header->model() != nullptr && n < header->count(); ++n) {
                words << header->model()->headerData(n, header->orientation()).toString();
            }
        }
        return words;
    }
    /// Nothing of a text is cut off where it stands.
    static void expectRoom(const QWidget& part) {
        if (const auto* label = qobject_cast<const QLabel*>(&part); label != nullptr && !label->text().isEmpty()) {
            if (label->wordWrap()) {
                EXPECT_GE(label->height(), label->heightForWidth(label->width())) << label->text().toStdString();
            } else {
                EXPECT_GE(label->width(), label->fontMetrics().horizontalAdvance(label->text()))
                    << label->text().toStdString();
            }
        } else if (const auto* button = qobject_cast<const QPushButton*>(&part)) {
            QString words = button->text();
            words.remove(QLatin1Char('&'));
            EXPECT_GE(button->width(), button->fontMetrics().horizontalAdvance(words)) << words.toStdString();
        }
    }
    void walk(const char* where) {
        settle();
        int seen = 0;
        for (const QWidget* part : window->findChildren<QWidget*>()) {
            if (!part->isVisible() || part->objectName().startsWith(QStringLiteral("qt_")) ||
                part->inherits("HelpPage")) {
                continue;
            }
            for (const QString& words : wordsOf(*part)) {
                if (isOfPaper(words)) {
                    continue;
                }
                EXPECT_TRUE(isForeign(words)) << where << ", " << named(*part) << ": " << words.toStdString();
                seen += words.isEmpty() ? 0 : 1;
            }
            expectRoom(*part);
        }
        EXPECT_GT(seen, 8) << where;
    }
};

TEST_F(OtherLanguage, EveryPageAndCardSpeaksItAndHasRoom) {
    QTest::qWait(50);
    walk("empty window");
    open();
    walk("table");
    drawRoute();
    card().labelField()->setText(QStringLiteral("FERN"));
    QTest::keyClick(card().labelField(), Qt::Key_Return);
    walk("card of a route");
    window->run("details");
    walk("ledger");
    for (const char* measure : {"draw-checkpoint", "draw-phase-line", "draw-unit"}) {
        window->run(measure);
        click(at(500, 600));
        click(at(700, 600));
        QTest::keyClick(&window->table(), Qt::Key_Return);
        walk(measure);
        QTest::keyClick(&window->table(), Qt::Key_Escape);
    }
    window->run("plan-card");
    walk("card of the plan");
    window->run("actions");
    walk("what can be done");
    window->run("actions");
    window->run("settings");
    walk("settings");
    window->run("settings");
    window->run("new-phase");
    walk("question");
    QTest::keyClick(window->question().field(), Qt::Key_Escape);
    window->run("copies");
    EXPECT_TRUE(QTest::qWaitFor([this] { return window->copies().isReady(); }, 20000));
    walk("copies");
}

TEST_F(OtherLanguage, TheTagBesideTheHandSpeaksIt) {
    open();
    window->run("route");
    click(at(-1000, -500));
    QTest::mouseMove(&window->table(), spot(at(0, 0)));
    const table::Tag drawing = table::tagFor(window->work(), window->table().wet(), {}, "MOVE");
    ASSERT_FALSE(drawing.first.empty());
    const table::Tag hint = table::tagFor(window->work(), {}, "click where the part ends", "");
    EXPECT_TRUE(isForeign(QString::fromStdString(drawing.second))) << drawing.second;
    EXPECT_TRUE(isForeign(QString::fromStdString(drawing.third))) << drawing.third;
    EXPECT_TRUE(isForeign(QString::fromStdString(hint.second))) << hint.second;
    EXPECT_TRUE(isForeign(QString::fromStdString(hint.third))) << hint.third;
}

TEST_F(OtherLanguage, EveryMenuSpeaksIt) {
    open();
    drawRoute();
    int seen = 0;
    for (QMenu* menu : window->findChildren<QMenu*>()) {
        Q_EMIT menu->aboutToShow();
        for (const QAction* action : menu->actions()) {
            const QString words = action->text().section(QLatin1Char('\t'), 0, 0);
            EXPECT_TRUE(isForeign(words)) << menu->title().toStdString() << ": " << words.toStdString();
            ++seen;
        }
        EXPECT_TRUE(isForeign(menu->title())) << menu->title().toStdString();
    }
    EXPECT_GT(seen, 100);
    auto* bar = window->findChild<QMenuBar*>();
    EXPECT_GE(bar->width(), bar->sizeHint().width()) << "none behind an arrow";
}

}  // namespace
}  // namespace crosstick::window
