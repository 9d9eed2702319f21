#pragma once

#include <memory>

class QGuiApplication;

namespace crosstick::press {

/// Gives Qt what it needs for faces and pictures where the program has not started it for a window: an application on
/// the offscreen platform (unless QT_QPA_PLATFORM names another), so that printing works without a display. Where one
/// runs already this does nothing. Lives in the command that prints, for as long as it prints.
class GuiStart {
  public:
    GuiStart();
    ~GuiStart();
    GuiStart(const GuiStart&) = delete;
    GuiStart& operator=(const GuiStart&) = delete;

  private:
    struct Parts;
    std::unique_ptr<Parts> parts_;
};

}  // namespace crosstick::press
