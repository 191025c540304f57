package wattle.server;

import com.google.gson.JsonElement;
import com.google.gson.JsonParseException;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.jsonrpc.MessageConsumer;
import org.eclipse.lsp4j.jsonrpc.MessageIssueException;
import org.eclipse.lsp4j.jsonrpc.MessageIssueHandler;
import org.eclipse.lsp4j.jsonrpc.MessageProducer;
import org.eclipse.lsp4j.jsonrpc.json.MessageJsonHandler;
import org.eclipse.lsp4j.jsonrpc.messages.Message;
import org.eclipse.lsp4j.jsonrpc.messages.MessageIssue;
import org.eclipse.lsp4j.jsonrpc.messages.NotificationMessage;
import org.eclipse.lsp4j.jsonrpc.messages.RequestMessage;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;

/**
 * The messages of an editor, each read by itself: one that is wrong is answered as the protocol says and does not move the
 * place of the next. What the library does itself reads on where the wrong message broke off.
 */
final class EditorMessages implements MessageProducer {
  /** What the protocol allows of the messages that may come. */
  private enum State { NEW, RUNNING, SHUT_DOWN }

  private static final String NOT_OFFERED = "this server does not offer that";

  private final EditorInput in;
  private final MessageJsonHandler json;
  private final MessageIssueHandler refusals;
  private final Unanswered unanswered;
  private State state = State.NEW;

  EditorMessages(EditorInput in, MessageJsonHandler json, MessageIssueHandler refusals, Unanswered unanswered) {
    this.in = in;
    this.json = json;
    this.refusals = refusals;
    this.unanswered = unanswered;
  }

  @Override
  public void listen(MessageConsumer consumer) {
    try {
      for (Optional<byte[]> body = in.next(); body.isPresent(); body = in.next()) {
        take(new String(body.get(), StandardCharsets.UTF_8), consumer);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void take(String body, MessageConsumer consumer) {
    Optional<Message> message = read(body);
    try {
      if (message.isPresent() && isInPlace(message.get())) {
        consumer.consume(message.get());
      }
    } catch (MessageIssueException e) {
      refuse(body, e);
    }
  }

  /** Absent where no message comes of it; what asked for an answer has been refused then. */
  private Optional<Message> read(String body) {
    try {
      return Optional.ofNullable(json.parseMessage(body));
    } catch (MessageIssueException e) {
      refuse(body, e);
      return Optional.empty();
    } catch (RuntimeException e) {
      // Of text that is no message, and of some parameters that are of another kind, the library throws this or that.
      request(body).ifPresent(r -> refuse(r, "wrong parameters", ResponseErrorCode.InvalidParams));
      return Optional.empty();
    }
  }

  /** The name and the number of a question, where so much can be read of it. */
  private static Optional<RequestMessage> request(String body) {
    if (!isJson(body)) {
      return Optional.empty();
    }
    JsonObject message = JsonParser.parseString(body).getAsJsonObject();
    if (!(message.get("id") instanceof JsonPrimitive id) || !(message.get("method") instanceof JsonPrimitive method) || id.isBoolean()) {
      return Optional.empty();
    }
    RequestMessage request = new RequestMessage();
    request.setId(id.getAsString());
    if (id.isNumber()) {
      request.setRawId(Either.forRight(id.getAsNumber()));
    }
    request.setMethod(method.getAsString());
    return Optional.of(request);
  }

  private void refuse(String body, MessageIssueException problem) {
    if (problem.getRpcMessage() instanceof RequestMessage request && unanswered.has(request.getMethod())) {
      refuse(request, NOT_OFFERED, ResponseErrorCode.MethodNotFound);
      return;
    }
    boolean parameters = problem.getRpcMessage() instanceof RequestMessage && isJson(body);
    refuse(problem.getRpcMessage(), parameters
        ? List.of(new MessageIssue("wrong parameters", ResponseErrorCode.InvalidParams.getValue()))
        : problem.getIssues());
  }

  /** Before it was told to begin a server answers nothing, and after it was told to end it does nothing but that. */
  private boolean isInPlace(Message message) {
    State before = state;
    if (message instanceof RequestMessage request) {
      boolean first = request.getMethod().equals("initialize");
      if (first == (before == State.NEW)) {
        state = first ? State.RUNNING : request.getMethod().equals("shutdown") ? State.SHUT_DOWN : before;
      }
      if (before == State.NEW && !first) {
        refuse(request, "the session has not begun: initialize comes first", ResponseErrorCode.ServerNotInitialized);
        return false;
      }
      if (before == State.SHUT_DOWN || first && before == State.RUNNING) {
        refuse(request, first ? "the session has begun already" : "the session is over: only exit is left",
            ResponseErrorCode.InvalidRequest);
        return false;
      }
      if (unanswered.has(request.getMethod())) {
        refuse(request, NOT_OFFERED, ResponseErrorCode.MethodNotFound);
        return false;
      }
      if (request.getParams() == null && !request.getMethod().equals("shutdown")) {
        refuse(request, "wrong parameters", ResponseErrorCode.InvalidParams);
        return false;
      }
      return true;
    }
    if (message instanceof NotificationMessage note && note.getParams() == null && !note.getMethod().equals("exit")
        && !note.getMethod().equals("initialized")) {
      return false; // it says nothing of what it is about
    }
    return before == State.RUNNING || message instanceof NotificationMessage note && note.getMethod().equals("exit");
  }

  private void refuse(Message message, String why, ResponseErrorCode code) {
    refuse(message, List.of(new MessageIssue(why, code.getValue())));
  }

  private void refuse(Message message, List<MessageIssue> why) {
    refusals.handle(message, why);
  }

  private static boolean isJson(String body) {
    try {
      JsonElement parsed = JsonParser.parseString(body);
      return parsed.isJsonObject();
    } catch (JsonParseException e) {
      return false;
    }
  }
}
