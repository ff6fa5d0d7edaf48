// The keys of a run that is laid out: digits where a number is asked, arrows along the posts, Enter to the next piece, Escape back.
import QtQuick
import Kneerail.Ui

QtObject {
    id: keyboard

    required property RunSentence sentence

    function take(key: int, modifiers: int): bool {
        if (modifiers & Qt.ControlModifier)
            return keyboard.undo(key);
        if (key === Qt.Key_Escape) {
            if (keyboard.sentence.asks)
                keyboard.sentence.closePad();
            else
                keyboard.sentence.leave();
            return true;
        }
        return keyboard.number(key) || keyboard.step(key);
    }

    function undo(key: int): bool {
        if (key !== Qt.Key_Z)
            return false;
        keyboard.sentence.undo();
        return true;
    }

    function number(key: int): bool {
        if (!keyboard.sentence.asksNumber)
            return false;
        if (key >= Qt.Key_0 && key <= Qt.Key_9)
            keyboard.sentence.digit(key - Qt.Key_0);
        else if (key === Qt.Key_Backspace)
            keyboard.sentence.erase();
        else if (key === Qt.Key_Minus)
            keyboard.sentence.sign();
        else if (key === Qt.Key_Return || key === Qt.Key_Enter)
            keyboard.sentence.nextPiece();
        else
            return false;
        return true;
    }

    function step(key: int): bool {
        if (key !== Qt.Key_Right && key !== Qt.Key_Left)
            return false;
        keyboard.sentence.stepPost(key === Qt.Key_Right ? 1 : -1);
        return true;
    }
}
