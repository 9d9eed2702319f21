#include "ui/look/theme.h"

#include <QApplication>
#include <QFile>
#include <QFontDatabase>
#include <QPalette>
#include <QString>

#include "ui/look/dimmer.h"
#include "ui/look/ticked_style.h"
#include "ui/press/own_family.h"

namespace crosstick::look {
namespace {

const QString kFamily = QStringLiteral("Crosstick B612-Regular");
const QString kBoldFamily = QStringLiteral("Crosstick B612-Bold");

QPalette paletteOf(const Colours& c) {
    QPalette p;
    p.setColor(QPalette::Window, c.lino);
    p.setColor(QPalette::WindowText, c.ink);
    p.setColor(QPalette::Base, c.well);
    p.setColor(QPalette::AlternateBase, c.band);
    p.setColor(QPalette::Text, c.ink);
    p.setColor(QPalette::PlaceholderText, c.inkTwo);
    p.setColor(QPalette::Button, c.lino);
    p.setColor(QPalette::ButtonText, c.ink);
    p.setColor(QPalette::BrightText, c.error);
    p.setColor(QPalette::ToolTipBase, c.well);
    p.setColor(QPalette::ToolTipText, c.ink);
    p.setColor(QPalette::Highlight, c.wash);
    p.setColor(QPalette::HighlightedText, c.ink);
    p.setColor(QPalette::Link, c.ours);
    for (const auto role : {QPalette::Light, QPalette::Midlight, QPalette::Dark, QPalette::Mid, QPalette::Shadow}) {
        p.setColor(role, c.edge);
    }
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
        p.setColor(QPalette::Disabled, role, c.inkTwo);
    }
    return p;
}

QString sheetOf(const Colours& c) {
    const QString text = QStringLiteral(R"(
QMenuBar { background: %1; color: %2; border: none; }
QMenuBar::item { padding: 8px 9px; background: transparent; }
QMenuBar::item:selected, QMenuBar::item:pressed { background: %3; }
QMenu { background: %4; color: %2; border: 1px solid %5; }
QMenu::item { padding: 5px 24px 5px 24px; }
QMenu[tokens="true"]::item { padding: 9px 24px 9px 72px; }
QMenu::item:selected { background: %6; }
QMenu::item:disabled { color: %7; }
QMenu::separator { height: 1px; background: %8; margin: 4px 8px; }
QLineEdit, QComboBox, QDateEdit, QPlainTextEdit, QSpinBox { background: %3; color: %2; border: 1px solid %5; border-radius: 0;
  padding: 3px 6px; selection-background-color: %6; selection-color: %2; min-height: 18px; }
QLineEdit:focus, QComboBox:focus, QPlainTextEdit:focus, QSpinBox:focus { border: 2px solid %9; padding: 2px 5px; }
QLineEdit[refused="true"] { border: 2px solid %10; padding: 2px 5px; }
QLineEdit[inRail="true"] { padding: 0 4px; min-height: 0; }
QPushButton { background: %1; color: %2; border: 1px solid %5; border-radius: 0; padding: 5px 12px; min-height: 16px; }
QPushButton:hover { background: %3; border-color: %2; }
QPushButton:focus { border: 2px solid %9; padding: 4px 11px; }
QPushButton:checked, QPushButton[main="true"] { background: %2; color: %3; }
QToolButton { background: %1; color: %2; border: 1px solid %5; border-radius: 0; padding: 3px 8px; }
QToolButton:hover { background: %3; border-color: %2; }
QToolButton:focus { border: 2px solid %9; padding: 2px 7px; }
QToolButton:checked { background: %2; color: %3; }
QToolButton:disabled { color: %7; border-style: dotted; }
QPushButton:disabled { color: %7; border-style: dotted; }
QCheckBox { spacing: 8px; color: %2; }
QCheckBox:focus { color: %9; }
QToolTip { background: %3; color: %2; border: 1px solid %5; }
QTableView { background: %4; alternate-background-color: %11; color: %2; border: none; gridline-color: transparent; }
QHeaderView::section { background: %4; color: %7; border: none; padding: 3px 8px; }
QScrollBar { background: %4; }
QScrollArea { border: none; background: %4; }
)");
    return text
        .arg(c.lino.name(), c.ink.name(), c.well.name(), c.card.name(), c.edge.name(), c.wash.name(), c.inkTwo.name(),
             c.rule.name(), c.ours.name())
        .arg(c.error.name(), c.band.name());
}

}  // namespace

Colours colours(Light light) {
    if (light == Light::Night) {
        const QColor ink(0xf2, 0x3c, 0x2e);
        return {QColor(0x05, 0x00, 0x00),
                QColor(0x10, 0x01, 0x01),
                QColor(0x17, 0x02, 0x02),
                QColor(0x07, 0x00, 0x00),
                QColor(0x1d, 0x03, 0x02),
                ink,
                ink,
                QColor(0xb5, 0x2a, 0x1e),
                QColor(0x5a, 0x12, 0x0c),
                QColor(0xff, 0x5a, 0x4a),
                QColor(0x33, 0x06, 0x04),
                ink,
                ink,
                ink};
    }
    return {QColor(0xa7, 0xb1, 0xa9), QColor(0xdc, 0xe3, 0xdc), QColor(0xed, 0xf1, 0xeb), QColor(0xfb, 0xfc, 0xfa),
            QColor(0xe2, 0xea, 0xdf), QColor(0x17, 0x20, 0x1c), QColor(0x46, 0x53, 0x4c), QColor(0x6b, 0x7b, 0x72),
            QColor(0xa9, 0xb6, 0xad), QColor(0x6a, 0x1b, 0x8c), QColor(0xe9, 0xdd, 0xf1), QColor(0x9e, 0x1b, 0x1b),
            QColor(0x7a, 0x4a, 0x00), QColor(0x1b, 0x54, 0x70)};
}

bool bringFace(const std::filesystem::path& share) {
    // Under families of our own: where the system has B612 too, a font query may give its Mono for a bold one.
    bool all = true;
    for (const char* title : {"B612-Regular", "B612-Bold"}) {
        QFile file(QString::fromStdString((share / "faces" / (std::string(title) + ".otf")).string()));
        const QByteArray font = file.open(QIODevice::ReadOnly)
                                    ? press::underOwnFamily(file.readAll(), std::string("Crosstick ") + title, title)
                                    : QByteArray{};
        all = !font.isEmpty() && QFontDatabase::addApplicationFontFromData(font) >= 0 && all;
    }
    return all;
}

QFont face(int pixels, Weight weight) {
    const bool isBold = weight == Weight::Bold || ordinaryLetters() == Weight::Bold;
    QFont font(QStringList{isBold ? kBoldFamily : kFamily, QStringLiteral("DejaVu Sans")});
    font.setPixelSize(pixels);
    return font;
}

QPalette tablePalette(QPalette from, Light light) {
    const Colours c = colours(light);
    from.setColor(QPalette::Window, c.card);
    from.setColor(QPalette::Base, c.card);
    from.setColor(QPalette::AlternateBase, c.band);
    from.setColor(QPalette::Text, c.ink);
    return from;
}

Weight ordinaryLetters() {
    return QApplication::font().families().contains(kBoldFamily) ? Weight::Bold : Weight::Regular;
}

void dress(QApplication& application, Light light, Weight ordinary) {
    const Colours c = colours(light);
    const QString all =
        ordinary == Weight::Bold ? QStringLiteral("* { font-family: \"%1\"; }").arg(kBoldFamily) : QString();
    const QString sheet = all + sheetOf(c);
    if (application.styleSheet() == sheet) {
        return;  // it wears that: every part would be measured and painted anew for nothing
    }
    // The desktop's own file dialog would be white by night.
    QApplication::setAttribute(Qt::AA_DontUseNativeDialogs, light == Light::Night);
    QApplication::setStyle(new TickedStyle);
    QApplication::setFont(QFont(QStringList{ordinary == Weight::Bold ? kBoldFamily : kFamily}));
    QApplication::setFont(face(12));
    QApplication::setPalette(paletteOf(c));
    // Parts that took their face when they were made follow by the sheet: it goes before what they have.
    application.setStyleSheet(sheet);
}

}  // namespace crosstick::look
