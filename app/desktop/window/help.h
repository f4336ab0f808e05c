#pragma once

#include <QString>

class QMainWindow;

namespace drapewright::desktop {

/// The sentence that always stands in the window.
QString standing_sentence();

/// Neither is modal: the work goes on beside them.
void show_about(QMainWindow& window);
/// Every action of the menus with its keys, and what the drawing listens to.
void show_shortcuts(QMainWindow& window);

}  // namespace drapewright::desktop
