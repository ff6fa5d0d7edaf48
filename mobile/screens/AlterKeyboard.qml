// The keys of a run that is changed: arrows along the posts, digits where a number is asked, Enter to what was said, Escape back.
import QtQuick
import Kneerail.Ui

QtObject {
    id: keyboard

    required property ChangedRun change

    function take(key: int): bool {
        if (key === Qt.Key_Escape) {
            if (keyboard.change.asks)
                keyboard.change.closePad();
            else
                keyboard.change.leave();
        } else if (key === Qt.Key_Right || key === Qt.Key_Left)
            keyboard.change.stepPost(key === Qt.Key_Right ? 1 : -1);
        else if (keyboard.change.asksNumber && key >= Qt.Key_0 && key <= Qt.Key_9)
            keyboard.change.digit(key - Qt.Key_0);
        else if (keyboard.change.asksNumber && key === Qt.Key_Backspace)
            keyboard.change.erase();
        else if (keyboard.change.asks && (key === Qt.Key_Return || key === Qt.Key_Enter))
            keyboard.change.closePad();
        else
            return false;
        return true;
    }
}
