#include "ui/window/help_page.h"

#include <algorithm>
#include <vector>

#include <QFile>
#include <QKeyEvent>
#include <QTextBlock>
#include <QTextCursor>

namespace crosstick::window {
namespace {

constexpr int kColumn = 760;  ///< pixels of a line that is still read easily
constexpr int kLeast = 24;
constexpr int kLetters = 13;

/// Headings in the sizes of the window, in place of those of a web page.
void setSizes(QTextDocument& document) {
    struct Place {
        int from, length;
        QFont face;
    };
    std::vector<Place> places;  // first all of them: a new format makes new fragments
    for (QTextBlock block = document.begin(); block.isValid(); block = block.next()) {
        const int level = block.blockFormat().headingLevel();
        QTextCursor cursor(block);
        QTextBlockFormat lines = block.blockFormat();
        lines.setBottomMargin(6);
        lines.setTopMargin(level > 1 ? 14 : 0);
        lines.setLineHeight(130, QTextBlockFormat::ProportionalHeight);
        cursor.setBlockFormat(lines);
        for (auto at = block.begin(); !at.atEnd(); ++at) {
            const QTextFragment part = at.fragment();
            const bool isBold = level > 0 || part.charFormat().fontWeight() > QFont::Normal;
            const int size = level == 1 ? 20 : level == 2 ? 15 : kLetters;
            places.push_back({part.position(), part.length(),
                              look::face(size, isBold ? look::Weight::Bold : look::Weight::Regular)});
        }
    }
    for (const Place& place : places) {
        QTextCursor letters(&document);
        letters.setPosition(place.from);
        letters.setPosition(place.from + place.length, QTextCursor::KeepAnchor);
        QTextCharFormat format;
        format.setFont(place.face);
        letters.setCharFormat(format);
    }
}

}  // namespace

HelpPage::HelpPage(const std::filesystem::path& file, QWidget* parent) : QTextBrowser(parent) {
    setAccessibleName(tr("Help"));
    setFrameShape(QFrame::NoFrame);
    setOpenLinks(false);
    QFile page(QString::fromStdString(file.string()));
    words_ = page.open(QIODevice::ReadOnly)
                 ? QString::fromUtf8(page.readAll())
                 : tr("The page of help is missing: %1. Setting the program up again brings it.").arg(page.fileName());
}

void HelpPage::setLight(look::Light light) {
    const look::Colours c = look::colours(light);
    QPalette p = palette();
    p.setColor(QPalette::Base, c.card);
    p.setColor(QPalette::Window, c.card);
    p.setColor(QPalette::Text, c.ink);
    setPalette(p);
    setAutoFillBackground(true);
    document()->setDefaultFont(look::face(kLetters));
    setMarkdown(words_);
    setSizes(*document());
}

void HelpPage::resizeEvent(QResizeEvent* event) {
    // First the margins: the words are laid into what these leave.
    const int side = std::max(kLeast, (width() - kColumn) / 2);
    setViewportMargins(side, kLeast, side, 0);
    QTextBrowser::resizeEvent(event);
}

void HelpPage::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        Q_EMIT left();
        return;
    }
    QTextBrowser::keyPressEvent(event);
}

}  // namespace crosstick::window
