// A plot with its words for who does not see it; its data as a table are its source's.
import QtQuick
import Bullace.Plots

PlotItem {
    id: root

    Accessible.role: Accessible.Chart
    Accessible.name: root.source === null ? "" : root.source.title
    Accessible.description: root.summary
}
