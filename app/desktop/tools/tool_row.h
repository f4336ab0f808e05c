#pragma once

#include <QWidget>
#include <map>

#include "app/desktop/tools/tracing_desk.h"

class QAction;
class QActionGroup;
class QComboBox;
class QLabel;
class QMenu;
class QPushButton;
class QToolButton;

namespace drapewright::desktop {

class CanvasTool;

/// The tools to choose from, and what a drawing becomes; below it, while the desk holds back an
/// outline that crosses itself, the ways to repair it.
class ToolRow : public QWidget {
  Q_OBJECT

 public:
  explicit ToolRow(TracingDesk& desk, QWidget* parent = nullptr);

  /// Every tool as an action, in groups, for the menu bar.
  void add_to(QMenu& menu) const;
  /// What the tool in hand asks for, and what is told; for whoever lays the row out.
  QLabel& words() { return *words_; }
  /// The tools that need a photograph are offered while there is one.
  void show_photo_tools(bool shown);
  /// Larger buttons, for fingers.
  void set_touch_sizes(bool large);

 signals:
  /// What the next drawing is to become.
  void target_wanted(const drapewright::desktop::OutlineTarget& target);

 private:
  struct Group {
    QToolButton* button;
    std::vector<QAction*> actions;
  };
  void add_group(const QString& title, const std::vector<Tool>& tools);
  QAction* action_for(Tool tool);
  QWidget* top_row();
  QWidget* repair_row();
  void follow();
  void fill_targets();
  void show_words(const QString& words);

  TracingDesk& desk_;
  QActionGroup* all_;
  std::map<Tool, QAction*> actions_;
  std::vector<Group> groups_;
  QComboBox* becomes_;
  QLabel* words_;
  QPushButton* keep_ = nullptr;  ///< made with the row that they stand in
  QPushButton* split_ = nullptr;
  QWidget* repair_;
  QAction* grid_ = nullptr;
  QToolButton* photo_ = nullptr;
};

}  // namespace drapewright::desktop
