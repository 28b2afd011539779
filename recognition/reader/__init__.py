"""What does one written line say?"""

from recognition.reader.neural import LinePicture, LineStrokes, NeuralReader
from recognition.reader.same_hand import Hand, LineStudy, reweighed
from recognition.reader.weights import ModelFacts

__all__ = ["Hand", "LinePicture", "LineStrokes", "LineStudy", "ModelFacts", "NeuralReader", "reweighed"]
