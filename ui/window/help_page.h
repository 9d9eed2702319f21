#pragma once

#include <filesystem>

#include <QTextBrowser>

#include "ui/look/theme.h"

namespace crosstick::window {

/// The one page of help, from the file of the manual.
class HelpPage final : public QTextBrowser {
    Q_OBJECT

  public:
    /// @param file  Markdown; where it is missing the page says so
    explicit HelpPage(const std::filesystem::path& file, QWidget* parent = nullptr);
    void setLight(look::Light light);

  Q_SIGNALS:
    void left();

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    QString words_;
};

}  // namespace crosstick::window
