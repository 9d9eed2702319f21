#include "ui/press/gui_start.h"

#include <array>
#include <cstdio>

#include <QGuiApplication>
#include <QLoggingCategory>
#include <QString>

namespace crosstick::press {

namespace {

/// Qt remarks in its own words that the system names no folder for running programs. Films need none, and whoever
/// prints from a script can do nothing about it; everything else is said as ever.
void sayUnlessOfFolders(QtMsgType type, const QMessageLogContext& context, const QString& message) {
    if (!message.startsWith(QStringLiteral("QStandardPaths: XDG_RUNTIME_DIR not set"))) {
        std::fputs(qPrintable(qFormatLogMessage(type, context, message) + QLatin1Char('\n')), stderr);
    }
}

}  // namespace

/// The application keeps references to the count and the arguments: they live beside it.
struct GuiStart::Parts {
    std::array<char, 10> name{"crosstick"};
    std::array<char*, 2> arguments{name.data(), nullptr};
    int count = 1;
    std::unique_ptr<QGuiApplication> application;
    QtMessageHandler before = nullptr;

    Parts() = default;
    Parts(const Parts&) = delete;
    Parts& operator=(const Parts&) = delete;
    ~Parts() {
        if (application) {
            application.reset();
            qInstallMessageHandler(before);
        }
    }
};

GuiStart::GuiStart() : parts_(std::make_unique<Parts>()) {
    if (QCoreApplication::instance() != nullptr) {
        return;
    }
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    parts_->before = qInstallMessageHandler(sayUnlessOfFolders);
    parts_->application = std::make_unique<QGuiApplication>(parts_->count, parts_->arguments.data());
}

GuiStart::~GuiStart() = default;

}  // namespace crosstick::press
