#pragma once

#include <array>

#include <QComboBox>
#include <QStackedWidget>
#include <QToolButton>

#include "ui/march/elements_table.h"
#include "ui/march/events_table.h"
#include "ui/march/march_sill.h"
#include "ui/march/paper_page.h"
#include "ui/march/profile_strip.h"
#include "ui/march/table_page.h"

class QVBoxLayout;

namespace crosstick::march {

/// The sill with the tables of a plan, one at a time: those that are typed (order of march, elements, tasks, events),
/// and those that follow from them and from the ledger's route (matrix, march table, profile, light).
class TablesSill final : public QWidget {
    Q_OBJECT

  public:
    enum class Page { Order, Elements, Tasks, Events, Matrix, MarchTable, Profile, Light };
    static constexpr int kPages = 8;
    static constexpr int kHeight = 232;

    TablesSill(work::Work& work, std::function<QString(const Error&)> say, const press::Faces* faces,
               QWidget* parent = nullptr);
    void setLight(look::Light light);
    void show(Page page);
    [[nodiscard]] Page page() const { return page_; }
    /// The column that a block shows; the first for no name.
    void showColumn(const std::string& column);
    void renew();
    [[nodiscard]] MarchSill& order() { return *order_; }
    [[nodiscard]] TablePage& elements() { return *elements_; }
    [[nodiscard]] TablePage& tasks() { return *tasks_; }
    [[nodiscard]] TablePage& events() { return *events_; }
    [[nodiscard]] PaperPage& paper() { return *paper_; }
    [[nodiscard]] ProfileStrip& profile() { return *profile_; }

  Q_SIGNALS:
    void pageWanted(crosstick::march::TablesSill::Page page);
    void left();  ///< back to the table

  protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    work::Work& work_;
    std::function<QString(const Error&)> say_;
    look::Light light_ = look::Light::Day;
    Page page_ = Page::Order;
    ElementsTable elementsTable_;
    TasksTable tasksTable_;
    EventsTable eventsTable_;
    std::array<QToolButton*, kPages> tabs_{};
    QStackedWidget* pages_;
    MarchSill* order_;
    TablePage *elements_, *tasks_, *events_;
    PaperPage* paper_;
    ProfileStrip* profile_;
    QComboBox* phase_;

    void buildTabs(QVBoxLayout* rows);
    void buildPages(const press::Faces* faces);
    void renewPhases();
    void renewMatrix();
    void renewMarchTable();
    void renewProfile();
    void renewLight();
    [[nodiscard]] const movement::RouteFigures* figures() const;
    [[nodiscard]] std::vector<movement::MarchTable> marchTables() const;
};

}  // namespace crosstick::march
