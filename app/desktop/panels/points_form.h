#pragma once

#include <QWidget>

#include "app/desktop/panels/points_model.h"

class QLabel;
class QPushButton;
class QTableView;

namespace drapewright::desktop {

/// The table of corner points with its buttons; takes pasted points, too.
class PointsForm : public QWidget {
  Q_OBJECT

 public:
  explicit PointsForm(QWidget* parent = nullptr);

  void set_ring(const geometry::Ring& ring);
  /// Whether the outline may not lose another point.
  PointsModel& model() { return *model_; }

 signals:
  /// The outline as the user made it; may have fewer than three points while a new one is typed.
  void ring_edited(const drapewright::geometry::Ring& ring, const QString& what);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void build_table();
  QPushButton* button(const QString& text, const QString& tip, void (PointsForm::*act)());
  int current_row() const;
  void select(int row);
  void add_point();
  void insert_point();
  void remove_point();
  void paste();
  void tell();

  PointsModel* model_;
  QTableView* table_;
  QLabel* message_;
  QPushButton* add_;
  QPushButton* insert_;
  QPushButton* remove_;
};

}  // namespace drapewright::desktop
