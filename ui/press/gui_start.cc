#include "ui/press/gui_start.h"

#include <array>

#include <QGuiApplication>

namespace crosstick::press {

/// The application keeps references to the count and the arguments: they live beside it.
struct GuiStart::Parts {
    std::array<char, 10> name{"crosstick"};
    std::array<char*, 2> arguments{name.data(), nullptr};
    int count = 1;
    std::unique_ptr<QGuiApplication> application;
};

GuiStart::GuiStart() : parts_(std::make_unique<Parts>()) {
    if (QCoreApplication::instance() != nullptr) {
        return;
    }
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    parts_->application = std::make_unique<QGuiApplication>(parts_->count, parts_->arguments.data());
}

GuiStart::~GuiStart() = default;

}  // namespace crosstick::press
