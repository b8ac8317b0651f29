// The one main of every test program with screens: without a display, drawn by the processor, any
// warning of Qt's is seen. What draws plots needs a QApplication.
#include <QApplication>
#include <QQuickWindow>

#define DOCTEST_CONFIG_IMPLEMENT
#include <doctest/doctest.h>

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT_QUICK_BACKEND", "software");
    qputenv("QT_SCALE_FACTOR", "1");
    const QApplication application(argc, argv);
    doctest::Context context(argc, argv);
    return context.run();
}
