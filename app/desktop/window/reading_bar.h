#pragma once

#include <QTimer>
#include <QWidget>

class QLabel;
class QProgressBar;

namespace drapewright::desktop {

class FileDesk;

/// Says which file is being read and how far that is, with a button to give it up. Comes up only
/// when a file takes long enough to be waited for.
class ReadingBar : public QWidget {
  Q_OBJECT

 public:
  explicit ReadingBar(FileDesk& files, QWidget* parent = nullptr);

 private:
  void start(const QString& path);
  void end();

  QLabel* name_;
  QProgressBar* progress_;
  QTimer late_;
};

}  // namespace drapewright::desktop
