#pragma once

#include <vector>

#include <QPushButton>
#include <QWidget>

namespace crosstick::look {

/// Buttons of which one is down, in rows of two or more, with the name of what is chosen over them.
class Choice final : public QWidget {
    Q_OBJECT

  public:
    Choice(const QString& name, const QStringList& words, int perRow, QWidget* parent);
    void show(int down);  ///< none where there is no such button
    [[nodiscard]] QPushButton* button(int n) const { return buttons_[static_cast<std::size_t>(n)]; }

  Q_SIGNALS:
    void chosen(int which);

  private:
    std::vector<QPushButton*> buttons_;
};

}  // namespace crosstick::look
