// A room under the top rail. It says what stands in the title block, and lays itself out upright or across.
import QtQuick

FocusScope {
    /// The window is higher than wide.
    property bool portrait: false
    /// What cannot wait stands in the title block in the place of the run.
    property bool lined: false
    /// Cells of the title block; in a portrait window only the last fit, so the most wanted comes first.
    property Item cells: null
    /// Portrait: the line under the rail, what you are in and what is kept.
    property string whereLine
    property string keptLine

    Accessible.role: Accessible.Pane
}
